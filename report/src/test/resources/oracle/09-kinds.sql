-- The kinds, a view each, named as in docs/findings.md: the animal, and who acts.

CREATE VIEW keeper_of AS
SELECT k.animal, k.source, k.start, s.owner AS organisation, r.exported AS registries_at, r.change
FROM keeper k JOIN animal a USING (animal) JOIN source s ON s.id = k.source JOIN registries r USING (animal)
WHERE NOT a.died;

CREATE VIEW found_waiting AS
WITH report AS (
  SELECT s.*, e.owner AS reporter,
    CASE WHEN s.who.kind = 'organisation' THEN s.who.organisation ELSE e.owner END AS has_it
  FROM statement s JOIN source e ON e.id = s.source
  WHERE s.fact = 'found' OR (s.fact = 'handed over' AND s.basis = 'intake-stray')
  QUALIFY row_number() OVER (PARTITION BY s.animal ORDER BY s.day DESC, s.source, s.key, s.slot) = 1),
to_ask AS (
  SELECT animal, who FROM custodian UNION ALL SELECT animal, who FROM live_registration)
SELECT r.animal, r.reporter AS organisation
FROM report r JOIN animal a USING (animal)
WHERE NOT a.died AND r.day >= getvariable('as_of')::DATE - 90
  AND NOT EXISTS (FROM statement s WHERE s.animal = r.animal AND s.day >= r.day
    AND (s.fact = 'reunited' OR (s.fact = 'handed over' AND NOT for_a_time(s.basis))))
  AND EXISTS (FROM to_ask t WHERE t.animal = r.animal AND t.who.kind <> 'nobody'
    AND t.who.organisation IS DISTINCT FROM r.has_it);

CREATE VIEW chips_diverge AS
WITH diverging AS (
  SELECT DISTINCT p.animal
  FROM live_registration p JOIN live_registration q ON q.animal = p.animal AND q.number <> p.number
  JOIN newest_export pe ON pe.source = p.source JOIN newest_export qe ON qe.source = q.source
  JOIN registries r ON r.animal = p.animal
  WHERE verdict(p.who, q.who) = 'different'
    AND new_enough(least(pe.exported, qe.exported), greatest(p.day, q.day), r.change)),
pairing AS (
  SELECT s.animal, e.owner FROM statement s JOIN source e ON e.id = s.source WHERE s.fact = 'paired'
  QUALIFY row_number() OVER (PARTITION BY s.animal ORDER BY s.day, s.source, s.key, s.slot) = 1)
SELECT d.animal, CASE WHEN c.who.kind <> 'nobody' THEN e.owner ELSE p.owner END AS organisation
FROM diverging d JOIN animal a USING (animal)
LEFT JOIN custodian c USING (animal) LEFT JOIN source e ON e.id = c.source LEFT JOIN pairing p USING (animal)
WHERE NOT a.died AND a.numbers > 1;

CREATE VIEW contact_behind AS
SELECT k.animal, k.organisation FROM keeper_of k
WHERE new_enough(k.registries_at, k.start, k.change)
  AND NOT EXISTS (FROM judged_registration j WHERE j.animal = k.animal AND j.acceptable)
  AND EXISTS (FROM judged_registration j WHERE j.animal = k.animal AND j.from_before);

CREATE VIEW records_behind AS
SELECT k.animal, k.organisation
FROM keeper_of k JOIN newest_export n ON n.source = k.source
JOIN (SELECT animal, max(day) AS last_day, bool_and(NOT acceptable AND NOT from_before) AS strangers
  FROM judged_registration GROUP BY animal) j ON j.animal = k.animal
WHERE j.strangers AND new_enough(k.registries_at, greatest(k.start, j.last_day), k.change)
  AND n.exported >= j.last_day + grace_days();

CREATE VIEW unregistered AS
SELECT k.animal, k.organisation
FROM keeper_of k JOIN covered_up_to c USING (animal)
WHERE new_enough(k.registries_at, k.start, k.change)
  AND NOT EXISTS (FROM live_registration l WHERE l.animal = k.animal)
  AND c.day >= k.start + grace_days();

CREATE VIEW details_differ AS
SELECT k.animal, k.organisation
FROM keeper_of k JOIN newest_version v ON v.animal = k.animal
WHERE new_enough(k.registries_at, greatest(k.start, v.first_stated), k.change)
  AND EXISTS (FROM live_registration l WHERE l.animal = k.animal AND verdict(l.who, v.who) = 'details differ')
  AND NOT EXISTS (FROM judged_registration j WHERE j.animal = k.animal AND j.closeness = 5);

-- A record that is still listed and whose number can't be read without guessing, or lost digits; neither the record,
-- under any damaged number of its, nor the animal that it was placed on or is paired with tells of a death.
CREATE VIEW damaged_record AS
WITH damaged AS (
  SELECT i.source, i.key, i.about, i.subject, bool_or(i.fact = 'died') AS died,
    list(i.other) FILTER (i.fact = 'paired') AS others
  FROM in_effect i ANTI JOIN unlisted USING (source, key, about, subject)
  WHERE i.about = 'damaged' OR (i.about = 'chip' AND i.subject IN (FROM cut_number))
  GROUP BY ALL),
of_dead AS (
  SELECT source, key FROM damaged WHERE died
  UNION
  SELECT d.source, d.key FROM damaged d
  LEFT JOIN repaired r ON d.about = 'damaged' AND r.source = d.source AND r.subject = d.subject
  JOIN carried c ON c.number = r.number OR list_contains(d.others, c.number)
  JOIN animal a ON a.animal = c.animal WHERE a.died)
SELECT d.source, d.key, d.subject, e.owner AS organisation
FROM damaged d JOIN source e ON e.id = d.source ANTI JOIN of_dead o ON o.source = d.source AND o.key = d.key;

-- One row per animal: the first kind in the order of the table.
CREATE VIEW finding_of_animal AS
SELECT animal AS anchor, kind, organisation FROM (
  SELECT 1 AS place, 'found-waiting' AS kind, * FROM found_waiting
  UNION ALL SELECT 2, 'chips-diverge', * FROM chips_diverge
  UNION ALL SELECT 3, 'contact-behind', * FROM contact_behind
  UNION ALL SELECT 4, 'records-behind', * FROM records_behind
  UNION ALL SELECT 5, 'unregistered', * FROM unregistered
  UNION ALL SELECT 6, 'details-differ', * FROM details_differ)
QUALIFY row_number() OVER (PARTITION BY animal ORDER BY place) = 1;

-- A damaged number is a record's, beside the animal's row.
CREATE VIEW finding AS
SELECT anchor, kind, organisation FROM finding_of_animal
UNION SELECT source || '/' || key, 'number-damaged', organisation FROM damaged_record;
