-- counts
SELECT
  (SELECT count(*)::int FROM account WHERE role = 'safety' AND disabled_at IS NULL AND NOT must_change) AS officers,
  (SELECT count(*)::int FROM account WHERE role = 'warehouse' AND disabled_at IS NULL) AS warehouse,
  (SELECT count(*)::int FROM rule WHERE kind = 'examination') AS "examinationRules",
  (SELECT count(*)::int FROM rule WHERE kind = 'load') AS "loadRules",
  (SELECT count(*)::int FROM rule WHERE kind = 'system') AS systems,
  (SELECT count(*)::int FROM rule WHERE kind = 'system' AND data ? 'approved') AS "approvedSystems",
  (SELECT coalesce(jsonb_agg(jsonb_build_object('kind', kind, 'count', count) ORDER BY kind), '[]') FROM (SELECT kind, count(*)::int FROM model GROUP BY kind) held) AS models, (SELECT coalesce(jsonb_agg(jsonb_build_object('kind', kind, 'count', count) ORDER BY kind), '[]') FROM (SELECT kind, count(*)::int FROM item GROUP BY kind) held) AS items,
  (SELECT count(*)::int FROM proposal WHERE state = 'proposed') AS waiting,
  (SELECT count(*)::int FROM tour WHERE removed_at IS NULL) AS tours,
  (SELECT count(*)::int FROM tour, jsonb_path_query(data, '$.shows[*].hangs[*] ? (@.boxes.size() > 0)') hang WHERE removed_at IS NULL) AS hangs,
  (SELECT count(*)::int FROM pack_plan) AS plans;
