-- The kinds, a view each, named as in docs/findings.md: the animal, and who acts.

CREATE VIEW keeper_of AS
SELECT k.animal, k.source, k.start, s.owner AS organisation, r.exported AS registries_at, r.change
FROM keeper k JOIN animal a USING (animal) JOIN source s ON s.id = k.source JOIN registries r USING (animal)
WHERE NOT a.dead;

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
WHERE NOT a.dead AND r.day >= getvariable('as_of')::DATE - 90
  AND NOT EXISTS (FROM statement s WHERE s.animal = r.animal AND s.day >= r.day
    AND (s.fact = 'reunited' OR (s.fact = 'handed over' AND NOT for_a_time(s.basis))))
  AND EXISTS (FROM to_ask t WHERE t.animal = r.animal AND t.who.kind <> 'nobody'
    AND t.who.organisation IS DISTINCT FROM r.has_it);

-- Whom one could reach at a registration: an organisation, or somebody with phone or e-mail.
CREATE MACRO has_phone_or_mail(who) AS who.kind = 'organisation'
  OR (who.kind = 'person' AND (who.details.phone IS NOT NULL OR who.details.email IS NOT NULL));

CREATE VIEW lost_unreachable AS
WITH report AS (
  SELECT s.*, e.owner AS organisation, s.day - grace_days() AS since
  FROM statement s JOIN source e ON e.id = s.source WHERE s.fact = 'lost'
  QUALIFY row_number() OVER (PARTITION BY s.animal ORDER BY s.day DESC, s.source, s.key, s.slot) = 1),
reached AS (
  SELECT r.animal FROM report r JOIN live_registration l USING (animal)
  WHERE l.who.kind = 'organisation' OR (has_phone_or_mail(l.who) AND (
    EXISTS (FROM keeper_version v WHERE v.animal = r.animal AND not_different(l.who, v.who))
    OR (r.who.kind = 'person' AND not_different(l.who, r.who))
    OR (r.who.kind <> 'person' AND NOT EXISTS (FROM keeper k WHERE k.animal = r.animal)))))
SELECT r.animal, r.organisation
FROM report r JOIN animal a USING (animal) JOIN registries g USING (animal) JOIN covered_up_to c USING (animal)
WHERE NOT a.dead AND r.day >= getvariable('as_of')::DATE - 180
  AND NOT EXISTS (FROM statement s WHERE s.animal = r.animal AND s.day >= r.day
    AND (s.fact IN ('reunited', 'found') OR s.basis IN ('intake-stray', 'return-to-owner')))
  AND NOT EXISTS (FROM counted_handover h WHERE h.animal = r.animal AND h.day >= r.day)
  AND new_enough(g.exported, r.since, g.change)
  AND r.animal NOT IN (FROM reached)
  AND (EXISTS (FROM live_registration l WHERE l.animal = r.animal) OR c.day >= r.since + grace_days());

-- Two records describe one number as two animals: of two kinds, or born years apart under names that share no word.
CREATE TABLE description AS
SELECT s.animal, s.number, s.source, s.key, s.slot, s.first_stated, e.owner, k.species, k.called, k.born
FROM statement s JOIN look k ON k.wording = s.rest JOIN source e ON e.id = s.source
ANTI JOIN unlisted u ON u.source = s.source AND u.key = s.key AND u.about = s.about AND u.subject = s.subject
WHERE s.fact = 'described';

CREATE MACRO other_species(a, b) AS a <> b AND a NOT IN ('other', 'unstated') AND b NOT IN ('other', 'unstated');

CREATE VIEW number_on_two_animals AS
WITH contradicted AS (
  SELECT p.* FROM description p
  WHERE EXISTS (FROM description q WHERE q.number = p.number AND (q.source <> p.source OR q.key <> p.key)
    AND (other_species(p.species, q.species)
      OR (abs(p.born - q.born) > 730 AND len(p.called) > 0 AND len(q.called) > 0
        AND len(list_intersect(p.called, q.called)) = 0))))
SELECT c.animal, c.owner AS organisation FROM contradicted c JOIN animal a USING (animal)
WHERE NOT a.dead
QUALIFY row_number() OVER (PARTITION BY c.animal
  ORDER BY c.first_stated DESC, c.source DESC, c.key DESC, c.slot DESC) = 1;

CREATE VIEW custody_unclear AS
WITH first_death AS (
  SELECT animal, owner FROM death
  QUALIFY row_number() OVER (PARTITION BY animal ORDER BY day, source, key, slot) = 1)
SELECT a.animal, CASE WHEN a.death_unclear THEN f.owner ELSE d.organisation END AS organisation
FROM animal a LEFT JOIN first_death f USING (animal) LEFT JOIN in_doubt d USING (animal)
WHERE a.death_unclear OR (d.organisation IS NOT NULL AND NOT a.dead);

-- Two registrations of an animal that name different people. Two that are both as they should be do not diverge.
CREATE VIEW diverging_pair AS
WITH fine AS (SELECT source, key, number FROM judged_registration WHERE acceptable)
SELECT p.animal, p.number, q.number AS other_number, p.registry, q.registry AS other_registry, p.source, p.key, p.day
FROM live_registration p JOIN live_registration q ON q.animal = p.animal
JOIN newest_export pe ON pe.source = p.source JOIN newest_export qe ON qe.source = q.source
JOIN registries r ON r.animal = p.animal
WHERE verdict(p.who, q.who) = 'different'
  AND new_enough(least(pe.exported, qe.exported), greatest(p.day, q.day), r.change)
  AND NOT ((p.source, p.key, p.number) IN (FROM fine) AND (q.source, q.key, q.number) IN (FROM fine));

CREATE VIEW chips_diverge AS
WITH diverging AS (
  SELECT DISTINCT animal FROM diverging_pair WHERE number <> other_number),
pairing AS (
  SELECT s.animal, e.owner FROM statement s JOIN source e ON e.id = s.source WHERE s.fact = 'paired'
  QUALIFY row_number() OVER (PARTITION BY s.animal ORDER BY s.day, s.source, s.key, s.slot) = 1)
SELECT d.animal, CASE WHEN c.who.kind <> 'nobody' THEN e.owner ELSE p.owner END AS organisation
FROM diverging d JOIN animal a USING (animal)
LEFT JOIN custodian c USING (animal) LEFT JOIN source e ON e.id = c.source LEFT JOIN pairing p USING (animal)
WHERE NOT a.dead AND a.numbers > 1;

CREATE VIEW contact_behind AS
SELECT k.animal, k.organisation FROM keeper_of k
WHERE new_enough(k.registries_at, k.start, k.change)
  AND NOT EXISTS (FROM judged_registration j WHERE j.animal = k.animal AND j.acceptable)
  AND EXISTS (FROM judged_registration j WHERE j.animal = k.animal AND j.from_before);

-- Nobody, or a name alone though the source fills in phones or e-mail.
CREATE VIEW placeholder_contact AS
WITH empty AS (
  SELECT l.animal, l.who.kind = 'nobody' OR (l.who.kind = 'person' AND l.who.details.phone IS NULL
    AND l.who.details.email IS NULL AND l.who.details.address IS NULL
    AND len(list_intersect(e.filled, ['phones', 'emails'])) > 0) AS so
  FROM live_registration l JOIN source e ON e.id = l.source)
SELECT k.animal, k.organisation FROM keeper_of k
JOIN (SELECT animal, bool_and(so) AS every_one FROM empty GROUP BY animal) e ON e.animal = k.animal
WHERE e.every_one AND new_enough(k.registries_at, k.start, k.change);

-- Numbers of registries that nobody else knows, with what was registered about them.
CREATE TABLE stray_registration AS
SELECT l.animal, l.number, l.who FROM live_registration l JOIN animal a USING (animal)
WHERE NOT a.dead AND a.numbers = 1 AND l.who.kind = 'person'
  AND NOT EXISTS (FROM statement s JOIN source e ON e.id = s.source WHERE s.animal = l.animal AND e.kind <> 'registration');

CREATE MACRO all_but_two(n) AS n[1:length(n) - 2];
-- What numbers that are one slip apart have in common: they are alike but for one place, or two neighbouring ones.
CREATE MACRO but_for_a_slip(n) AS
  [n[1:i - 1] || '?' || n[i + 1:length(n)] FOR i IN range(1, length(n) + 1)]
  || [n[1:i - 1] || '??' || n[i + 2:length(n)] FOR i IN range(1, length(n))];

CREATE TABLE mistyped_pair AS
WITH species_told AS (
  SELECT s.number, list(DISTINCT k.species) AS kinds FROM statement s JOIN look k ON k.wording = s.rest
  WHERE s.fact = 'described' AND k.species NOT IN ('other', 'unstated') GROUP BY s.number),
unregistered_number AS (
  SELECT DISTINCT k.animal, s.number FROM keeper_of k JOIN statement s ON s.animal = k.animal
  JOIN source e ON e.id = s.source AND e.kind <> 'registration'
  WHERE length(s.number) IN (9, 15) AND new_enough(k.registries_at, k.start, k.change)
    AND NOT EXISTS (FROM live_registration l WHERE l.animal = k.animal)),
near AS (
  SELECT r.animal AS stray, r.number AS n, r.who, u.animal, u.number AS m
  FROM (SELECT *, unnest(but_for_a_slip(number)) AS form FROM stray_registration) r
  JOIN (SELECT *, unnest(but_for_a_slip(number)) AS form FROM unregistered_number) u USING (form)
  WHERE all_but_two(u.number) <> all_but_two(r.number) AND one_slip(u.number, r.number))
SELECT DISTINCT n.stray, n.n, n.animal, n.m
FROM near n LEFT JOIN species_told p ON p.number = n.n LEFT JOIN species_told q ON q.number = n.m
WHERE (p.kinds IS NULL OR q.kinds IS NULL OR len(list_distinct(p.kinds || q.kinds)) = 1)
  AND EXISTS (FROM keeper_version v WHERE v.animal = n.animal AND verdict(n.who, v.who) IN ('same', 'details differ'));

CREATE VIEW mistyped_registration AS
SELECT p.animal, k.organisation FROM mistyped_pair p JOIN keeper_of k USING (animal)
WHERE (SELECT count(*) FROM mistyped_pair o WHERE o.n = p.n) = 1
  AND (SELECT count(*) FROM mistyped_pair o WHERE o.animal = p.animal) = 1;

CREATE VIEW records_behind AS
SELECT k.animal, k.organisation
FROM keeper_of k JOIN newest_export n ON n.source = k.source
JOIN (SELECT animal, max(day) AS last_day, bool_and(NOT acceptable AND NOT from_before) AS strangers
  FROM judged_registration WHERE who.kind <> 'nobody' GROUP BY animal) j ON j.animal = k.animal
WHERE j.strangers AND new_enough(k.registries_at, greatest(k.start, j.last_day), k.change)
  AND n.exported >= j.last_day + grace_days();

CREATE VIEW unregistered AS
SELECT k.animal, k.organisation
FROM keeper_of k JOIN covered_up_to c USING (animal)
WHERE new_enough(k.registries_at, k.start, k.change)
  AND NOT EXISTS (FROM live_registration l WHERE l.animal = k.animal)
  AND c.day >= k.start + grace_days();

-- Boxes of numbers that were supplied.
CREATE TABLE supply AS
SELECT i.source, i.key, i.slot, i.day, i.stated_day, i.first_stated, i.who.organisation AS purchaser, b.first, b.last, b.prepaid,
  i.who.organisation IN (SELECT id FROM organisation) AS in_directory,
  NOT EXISTS (FROM unlisted u WHERE u.source = i.source AND u.key = i.key AND u.about = i.about) AS listed
FROM in_effect i JOIN box b ON b.wording = i.rest WHERE i.fact = 'supplied';
CREATE MACRO in_box(number, first, last) AS length(number) = length(first) AND number BETWEEN first AND last;

CREATE VIEW prepaid_unused AS
SELECT u.* FROM unregistered u
WHERE EXISTS (FROM carried c JOIN supply s ON s.prepaid AND in_box(c.number, s.first, s.last) WHERE c.animal = u.animal);

CREATE VIEW registries_disagree AS
WITH earliest AS (
  SELECT animal, registry FROM diverging_pair WHERE number = other_number AND registry <> other_registry
  QUALIFY row_number() OVER (PARTITION BY animal ORDER BY day, source, key, natural_order(number)) = 1)
SELECT f.animal, CASE WHEN c.who.kind <> 'nobody' THEN e.owner ELSE f.registry END AS organisation
FROM earliest f JOIN animal a USING (animal)
LEFT JOIN custodian c USING (animal) LEFT JOIN source e ON e.id = c.source
WHERE NOT a.dead;

-- Nobody is known to have the animal, but who bought its chip is.
CREATE VIEW trail_ends_at_purchaser AS
WITH bought AS (
  SELECT c.animal, c.number, s.purchaser, s.in_directory, s.day, s.first_stated
  FROM carried c JOIN supply s ON in_box(c.number, s.first, s.last)
  QUALIFY row_number() OVER (PARTITION BY c.number ORDER BY s.day DESC, s.source DESC, s.key DESC, s.slot DESC) = 1),
purchaser AS (
  SELECT * FROM bought WHERE in_directory
  QUALIFY row_number() OVER (PARTITION BY animal ORDER BY natural_order(number)) = 1),
told AS (
  SELECT s.animal, max(s.day) AS last_day, list(e.owner) AS owners, bool_or(e.kind <> 'registration') AS in_use
  FROM statement s JOIN source e ON e.id = s.source GROUP BY s.animal),
may_know AS (
  SELECT animal, exported FROM knows
  UNION
  SELECT p.animal, w.exported FROM purchaser p JOIN waited_for w ON w.owner = p.purchaser
  WHERE w.whole AND w.kind NOT IN ('registration', 'supply'))
SELECT p.animal, p.purchaser AS organisation
FROM purchaser p JOIN animal a USING (animal) JOIN told t USING (animal) JOIN covered_up_to c USING (animal)
JOIN heard_in_full h ON h.owner = p.purchaser JOIN last_learnt l USING (animal)
JOIN registries r USING (animal) LEFT JOIN custodian k USING (animal)
WHERE NOT a.dead AND (k.animal IS NULL OR k.who.kind = 'nobody')
  AND t.in_use AND NOT list_contains(t.owners, p.purchaser)
  AND NOT EXISTS (FROM live_registration l WHERE l.animal = p.animal)
  AND c.day >= p.day + grace_days() AND h.day >= greatest(p.day, t.last_day) + grace_days()
  AND new_enough(r.exported, greatest(p.day, t.last_day), greatest(l.day, p.first_stated))
  AND NOT EXISTS (FROM may_know m WHERE m.animal = p.animal
    AND NOT new_enough(m.exported, greatest(p.day, t.last_day), greatest(l.day, p.first_stated)));

CREATE VIEW scan AS
SELECT s.*, s.basis AS result, e.owner FROM statement s JOIN source e ON e.id = s.source WHERE s.fact = 'scanned';

CREATE VIEW not_detected AS
SELECT s.animal, s.owner AS organisation FROM scan s JOIN animal a USING (animal)
WHERE NOT a.dead AND s.result = 'not-detected' AND s.day >= getvariable('as_of')::DATE - 365
  AND NOT EXISTS (FROM scan o WHERE o.number = s.number AND (o.day > s.day OR (o.day = s.day AND o.result = 'read')))
QUALIFY row_number() OVER (PARTITION BY s.animal ORDER BY s.day DESC, s.source, s.key, s.slot) = 1;

CREATE VIEW details_differ AS
SELECT k.animal, k.organisation
FROM keeper_of k JOIN newest_version v ON v.animal = k.animal
WHERE new_enough(k.registries_at, greatest(k.start, v.first_stated), k.change)
  AND EXISTS (FROM live_registration l WHERE l.animal = k.animal AND verdict(l.who, v.who) = 'details differ')
  AND NOT EXISTS (FROM judged_registration j WHERE j.animal = k.animal AND j.closeness = 5);

-- Whoever reads the number asks a registry that knows nothing, though another one knows the right contact.
CREATE VIEW registered_elsewhere AS
WITH of_number AS (
  SELECT c.animal, c.number, min(r.up_to) AS up_to, bool_and(r.up_to IS NOT NULL) AS all_heard
  FROM carried c JOIN given_to g USING (number)
  JOIN registry_of_number r ON r.number = c.number AND r.registry = g.registry
  WHERE NOT EXISTS (FROM live_registration l JOIN given_to o ON o.number = l.number AND o.registry = l.registry
    WHERE l.number = c.number)
  GROUP BY ALL)
SELECT DISTINCT k.animal, k.organisation
FROM keeper_of k JOIN of_number n USING (animal) JOIN judged_registration j ON j.number = n.number AND j.acceptable
WHERE new_enough(k.registries_at, k.start, k.change) AND n.all_heard AND n.up_to >= k.start + grace_days();

CREATE VIEW latest_visit AS
SELECT v.animal, v.day, v.source, e.owner, e.filled
FROM visit v JOIN source e ON e.id = v.source JOIN animal a USING (animal) WHERE NOT a.dead
QUALIFY row_number() OVER (PARTITION BY v.animal ORDER BY v.day DESC, v.source DESC, v.key DESC, v.slot DESC) = 1;

CREATE VIEW scan_overdue AS
SELECT v.animal, v.owner AS organisation FROM latest_visit v
WHERE v.day >= getvariable('as_of')::DATE - 365 AND v.owner IN (FROM clinic) AND list_contains(v.filled, 'scans')
  AND NOT EXISTS (FROM statement s WHERE s.animal = v.animal AND s.day >= v.day - 400
    AND (s.fact = 'implanted' OR (s.fact = 'scanned' AND s.basis = 'read')))
  AND NOT EXISTS (FROM not_heard n JOIN source e ON e.id = n.source
    WHERE n.animal = v.animal AND list_contains(e.filled, 'scans'));

CREATE VIEW non_iso_only AS
SELECT k.animal, v.owner AS organisation FROM keeper_of k JOIN latest_visit v USING (animal)
WHERE v.day >= getvariable('as_of')::DATE - 1095
  AND NOT EXISTS (FROM carried c WHERE c.animal = k.animal AND length(c.number) = 15)
  AND NOT EXISTS (FROM not_heard n WHERE n.animal = k.animal);

CREATE VIEW registered_after_death AS
WITH first_death AS (
  SELECT * FROM death WHERE NOT contradicted AND told_by <> 'registration'
  QUALIFY row_number() OVER (PARTITION BY animal ORDER BY day, source, key, slot, first_stated) = 1)
SELECT DISTINCT f.animal, f.owner AS organisation
FROM first_death f JOIN live_registration l USING (animal) JOIN newest_export n ON n.source = l.source
WHERE n.exported >= f.first_stated + grace_days();

-- Boxes of which a number was never heard of by anybody, a year after they were supplied.
CREATE TABLE heard_of AS
SELECT DISTINCT subject AS number FROM in_effect WHERE about = 'chip'
UNION SELECT number FROM statement
UNION SELECT unnest(candidates) FROM in_effect WHERE about = 'damaged';

-- When numbers were last heard of of which nothing is left: all was taken back.
CREATE TABLE not_heard_of_since AS
WITH gone AS (
  SELECT source, about, subject, exported AS day FROM withdrawal
  UNION ALL
  SELECT source, about, subject, greatest(off, back) FROM off_the_list),
meant AS (
  SELECT subject AS number, day FROM gone WHERE about = 'chip'
  UNION ALL
  SELECT unnest(t.candidates), g.day FROM gone g JOIN told t USING (source, about, subject)
  WHERE g.about = 'damaged' AND NOT EXISTS (FROM in_effect i
    WHERE i.source = g.source AND i.about = g.about AND i.subject = g.subject))
SELECT number, max(day) AS day FROM meant ANTI JOIN heard_of USING (number) GROUP BY number;

CREATE VIEW stock_unaccounted AS
WITH old_box AS (
  SELECT s.* FROM supply s JOIN heard_in_full h ON h.owner = s.purchaser
  WHERE s.listed AND s.in_directory AND s.purchaser NOT IN (SELECT id FROM registry)
    AND s.stated_day <= getvariable('as_of')::DATE - 365 AND h.day >= s.stated_day + 365
    AND s.last::BIGINT - s.first::BIGINT < 10000)
SELECT b.source, b.key, b.purchaser AS organisation FROM old_box b
WHERE NOT EXISTS (FROM waited_for w WHERE w.kind <> 'supply' AND (w.exported < b.stated_day + 365
    OR w.exported < b.first_stated - 7
    OR w.exported < (SELECT max(n.day) FROM not_heard_of_since n WHERE in_box(n.number, b.first, b.last)) - 7))
  AND (SELECT count(*) FROM heard_of h WHERE in_box(h.number, b.first, b.last)) < b.last::BIGINT - b.first::BIGINT + 1;

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
  JOIN animal a ON a.animal = c.animal WHERE a.dead)
SELECT d.source, d.key, d.subject, e.owner AS organisation
FROM damaged d JOIN source e ON e.id = d.source ANTI JOIN of_dead o ON o.source = d.source AND o.key = d.key;

-- One row per animal: the first kind in the order of the table.
CREATE VIEW finding_of_animal AS
SELECT animal AS anchor, kind, organisation FROM (
  SELECT 1 AS place, 'found-waiting' AS kind, * FROM found_waiting
  UNION ALL SELECT 2, 'lost-unreachable', * FROM lost_unreachable
  UNION ALL SELECT 3, 'number-on-two-animals', * FROM number_on_two_animals
  UNION ALL SELECT 4, 'custody-unclear', * FROM custody_unclear
  UNION ALL SELECT 5, 'chips-diverge', * FROM chips_diverge
  UNION ALL SELECT 6, 'contact-behind', * FROM contact_behind
  UNION ALL SELECT 7, 'placeholder-contact', * FROM placeholder_contact
  UNION ALL SELECT 8, 'mistyped-registration', * FROM mistyped_registration
  UNION ALL SELECT 9, 'records-behind', * FROM records_behind
  UNION ALL SELECT 10, 'prepaid-unused', * FROM prepaid_unused
  UNION ALL SELECT 11, 'unregistered', * FROM unregistered
  UNION ALL SELECT 12, 'registries-disagree', * FROM registries_disagree
  UNION ALL SELECT 13, 'trail-ends-at-purchaser', * FROM trail_ends_at_purchaser
  UNION ALL SELECT 14, 'not-detected', * FROM not_detected
  UNION ALL SELECT 15, 'details-differ', * FROM details_differ
  UNION ALL SELECT 16, 'registered-elsewhere', * FROM registered_elsewhere
  UNION ALL SELECT 17, 'scan-overdue', * FROM scan_overdue
  UNION ALL SELECT 18, 'non-iso-only', * FROM non_iso_only
  UNION ALL SELECT 19, 'registered-after-death', * FROM registered_after_death)
QUALIFY row_number() OVER (PARTITION BY animal ORDER BY place) = 1;

-- A damaged number is a record's, and unaccounted stock a box's, beside the animal's row.
CREATE VIEW finding AS
SELECT anchor, kind, organisation FROM finding_of_animal
UNION SELECT source || '/' || key, 'number-damaged', organisation FROM damaged_record
UNION SELECT source || '/' || key, 'stock-unaccounted', organisation FROM stock_unaccounted;
