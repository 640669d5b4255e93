-- what a tick decides on
SELECT plan.id, plan.state, plan.tour_id AS "tourId", head.data->'show' AS show,
  (SELECT coalesce(jsonb_agg(jsonb_build_object('id', data->'id', 'rows', (SELECT coalesce(jsonb_agg(jsonb_build_object('number', row->'number')), '[]')
     FROM jsonb_array_elements(data->'rows') row)) ORDER BY place), '[]') FROM plan_part WHERE plan_id = plan.id AND part = 'truck') AS trucks,
  (SELECT coalesce(jsonb_agg(data - '{picks,joints,outline,stages,boxes,masses}'::text[] ORDER BY place), '[]') FROM plan_part WHERE plan_id = plan.id AND part = 'hang') AS hangs,
  (SELECT coalesce(jsonb_agg(jsonb_build_object('number', move->'number')), '[]') FROM plan_part, jsonb_array_elements(data->'moves') move
   WHERE plan_id = plan.id AND part = 'carts') AS moves
FROM pack_plan plan JOIN plan_part head ON head.plan_id = plan.id AND head.part = 'head' WHERE plan.id = $1;
