-- a page
SELECT proposal.id, kind, subject, field, was, wanted, reason, proposed_at AS "proposedAt", coalesce(account.name, 'Cartwright') AS "proposedBy" FROM proposal LEFT JOIN account ON account.id = proposed_by_id
WHERE state = 'proposed' AND ($1::bigint IS NULL OR proposal.id > $1) ORDER BY proposal.id LIMIT $2;
SELECT count(*)::int AS count, max(id)::text AS newest FROM proposal WHERE state = 'proposed';

-- of an item
SELECT proposal.id, kind, subject, field, was, wanted, reason, proposed_at AS "proposedAt", coalesce(account.name, 'Cartwright') AS "proposedBy" FROM proposal LEFT JOIN account ON account.id = proposed_by_id
WHERE state = 'proposed' AND kind IN ('item', 'record') AND subject = $1 ORDER BY proposal.id LIMIT 100;

-- of the catalogue
SELECT proposal.id, kind, subject, field, was, wanted, reason, proposed_at AS "proposedAt", coalesce(account.name, 'Cartwright') AS "proposedBy" FROM proposal LEFT JOIN account ON account.id = proposed_by_id
WHERE state = 'proposed' AND kind NOT IN ('item', 'record') ORDER BY proposal.id LIMIT 500;
