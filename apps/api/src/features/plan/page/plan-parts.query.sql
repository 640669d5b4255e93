-- one part
SELECT data FROM plan_part WHERE plan_id = $1 AND part = $2 AND ($3::text IS NULL OR key = $3) ORDER BY place;

-- names of parts
SELECT key FROM plan_part WHERE plan_id = $1 AND part = $2 ORDER BY place;

-- findings of a weight
SELECT (SELECT count(*)::int FROM jsonb_array_elements(data) each WHERE each->>'weight' = $2) AS count FROM plan_part WHERE plan_id = $1 AND part = 'findings';

-- ticks
SELECT kind, subject, place FROM tick WHERE plan_id = $1 ORDER BY ticked_at, kind, subject, place;

-- carts read
SELECT load, checked_at AS "checkedAt", checked_by AS "checkedBy" FROM cart_check WHERE plan_id = $1 ORDER BY checked_at, load;

-- whole
SELECT plan FROM pack_plan WHERE id = $1;
