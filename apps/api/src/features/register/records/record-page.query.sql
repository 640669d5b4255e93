-- a page
SELECT record.id, record.data, record.recorded_by, record.recorded_at, record.reason, record.supersedes, later.id AS superseded_by, item.kind,
  file.id AS file_id, file.name AS file_name, file.type AS file_type, octet_length(file.bytes) AS file_size, file.sha256,
  (SELECT min(next.data->>'on') FROM examination next WHERE next.item_id = record.item_id AND next.data->>'on' > record.data->>'on'
    AND NOT EXISTS (SELECT FROM examination corrected WHERE corrected.supersedes = next.id)) AS next_on
FROM examination record JOIN item ON item.id = record.item_id LEFT JOIN examination later ON later.supersedes = record.id
LEFT JOIN report_file file ON file.id = (record.data->>'reportFile')::uuid
WHERE record.item_id = $1 AND ($2::bigint IS NULL OR record.id < $2) ORDER BY record.id DESC LIMIT $3;
SELECT data FROM rule WHERE kind = 'examination' AND is_accepted ORDER BY place;
