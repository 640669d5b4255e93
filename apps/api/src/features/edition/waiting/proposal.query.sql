-- a page
SELECT proposal.id, kind, subject, field, was, wanted, reason, proposed_by_id AS "proposedById", proposed_at AS "proposedAt", coalesce(account.name, 'Cartwright') AS "proposedBy" FROM proposal LEFT JOIN account ON account.id = proposed_by_id
WHERE state = 'proposed' AND ($1::bigint IS NULL OR proposal.id > $1) ORDER BY proposal.id LIMIT $2;
SELECT count(*)::int AS count, max(id)::text AS newest, coalesce(bool_or(proposed_by_id = $1), false) AS own FROM proposal WHERE state = 'proposed';
SELECT FROM account WHERE id = $1 AND role = 'safety' AND disabled_at IS NULL AND (SELECT is_on FROM one_person ORDER BY id DESC LIMIT 1)
  AND NOT EXISTS (SELECT FROM account other WHERE other.role = 'safety' AND other.disabled_at IS NULL AND other.id <> account.id);

-- of an item
SELECT proposal.id, kind, subject, field, was, wanted, reason, proposed_by_id AS "proposedById", proposed_at AS "proposedAt", coalesce(account.name, 'Cartwright') AS "proposedBy" FROM proposal LEFT JOIN account ON account.id = proposed_by_id
WHERE state = 'proposed' AND kind IN ('item', 'record') AND subject = $1 ORDER BY proposal.id LIMIT 100;
SELECT FROM account WHERE id = $1 AND role = 'safety' AND disabled_at IS NULL AND (SELECT is_on FROM one_person ORDER BY id DESC LIMIT 1)
  AND NOT EXISTS (SELECT FROM account other WHERE other.role = 'safety' AND other.disabled_at IS NULL AND other.id <> account.id);

-- of the catalogue
SELECT proposal.id, kind, subject, field, was, wanted, reason, proposed_by_id AS "proposedById", proposed_at AS "proposedAt", coalesce(account.name, 'Cartwright') AS "proposedBy" FROM proposal LEFT JOIN account ON account.id = proposed_by_id
WHERE state = 'proposed' AND kind NOT IN ('item', 'record') ORDER BY proposal.id LIMIT 500;
SELECT FROM account WHERE id = $1 AND role = 'safety' AND disabled_at IS NULL AND (SELECT is_on FROM one_person ORDER BY id DESC LIMIT 1)
  AND NOT EXISTS (SELECT FROM account other WHERE other.role = 'safety' AND other.disabled_at IS NULL AND other.id <> account.id);
