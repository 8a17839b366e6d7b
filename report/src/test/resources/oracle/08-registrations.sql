-- Registrations, and how new the registries' records are.

CREATE TABLE registered AS SELECT * FROM statement WHERE fact = 'registered';

-- The last registration of each record, by export date.
CREATE TABLE speaking AS
SELECT * FROM registered
QUALIFY row_number() OVER (PARTITION BY source, key, number ORDER BY first_stated DESC, content DESC) = 1;

-- Since when a record names its present primary: the export that said so first, after the last one that named another.
CREATE TABLE present_primary AS
WITH another AS (
  SELECT s.source, s.key, s.number, max(o.first_stated) AS last_stated,
    bool_or(o.stated_day = s.stated_day AND o.first_stated < s.first_stated) AS under_the_same_day
  FROM speaking s JOIN registered o USING (source, key, number) WHERE o.who.wording <> s.who.wording
  GROUP BY ALL)
SELECT s.source, s.key, s.number, coalesce(any_value(a.under_the_same_day), false) AS renamed,
  min(r.first_stated) AS first_stated
FROM speaking s JOIN registered r USING (source, key, number) LEFT JOIN another a USING (source, key, number)
WHERE r.who.wording = s.who.wording AND (a.last_stated IS NULL OR r.first_stated > a.last_stated)
GROUP BY ALL;

CREATE TABLE live_registration AS
SELECT s.animal, s.number, s.source, e.owner AS registry, s.key, s.who,
  CASE WHEN s.stated_day IS NULL OR p.renamed THEN p.first_stated ELSE s.stated_day END AS day
FROM speaking s JOIN present_primary p USING (source, key, number)
JOIN source e ON e.id = s.source AND e.kind = 'registration'
ANTI JOIN (SELECT source, key, number FROM statement WHERE fact = 'ended') USING (source, key, number)
ANTI JOIN unlisted USING (source, key, about, subject);

-- The registries to which the directory gives a number.
CREATE TABLE given_to AS
SELECT c.animal, c.number, r.registry
FROM carried c JOIN registry_range r ON length(c.number) = length(r.first) AND c.number BETWEEN r.first AND r.last;

-- Which registries may hold a number: by the directory's ranges, or because a record of theirs speaks of it.
CREATE TABLE may_hold AS
FROM given_to
UNION
SELECT c.animal, c.number, e.owner
FROM carried c JOIN statement s ON s.number = c.number
JOIN source e ON e.id = s.source AND e.kind = 'registration';

CREATE TABLE newest_export AS
SELECT source, any_value(owner) AS owner, any_value(kind) AS kind, max(exported) AS exported,
  max(CASE WHEN sends = 'full' THEN exported END) AS full_exported, any_value(whole) AS whole
FROM counted_export GROUP BY source;

-- Up to when the sources of an organisation that sends whole exports of its own records sent everything.
CREATE VIEW heard_in_full AS
SELECT owner, max(full_exported) AS day FROM newest_export
WHERE whole AND kind NOT IN ('registration', 'supply') AND full_exported IS NOT NULL GROUP BY owner;

-- When a registry's record went off the list for the last time, and when it came back after that.
CREATE TABLE off_the_list AS
WITH off AS (
  SELECT d.source, d.key, d.about, d.subject, max(d.exported) AS off
  FROM disappearance d JOIN source e ON e.id = d.source AND e.kind = 'registration' GROUP BY ALL)
SELECT o.source, o.about, o.subject, o.off, (SELECT min(s.exported) FROM stated s WHERE s.source = o.source
  AND s.key = o.key AND s.about = o.about AND s.subject = o.subject AND s.exported > o.off) AS back
FROM off o;

-- The last change in what is known of an animal.
CREATE TABLE last_change AS
WITH change AS (
  SELECT animal, known_since AS day FROM custodian
  UNION ALL
  SELECT animal, first_stated FROM statement WHERE fact IN ('handed over', 'paired', 'registered', 'ended')
  UNION ALL
  SELECT c.animal, greatest(w.exported, p.since)
  FROM withdrawal w JOIN place p USING (source, about, subject) JOIN carried c USING (number)
  UNION ALL
  SELECT c.animal, greatest(o.off, o.back, p.since)
  FROM off_the_list o JOIN place p USING (source, about, subject) JOIN carried c USING (number)
  UNION ALL
  SELECT c.animal, d.day FROM doubt d JOIN carried c USING (number))
SELECT animal, max(day) AS day FROM change GROUP BY animal;

-- How new the oldest newest export is among the sources of registries that may hold one of the animal's numbers.
CREATE TABLE oldest_registry AS
SELECT a.animal, coalesce(min(n.exported), DATE '9999-12-31') AS exported
FROM animal a LEFT JOIN may_hold m ON m.animal = a.animal
LEFT JOIN newest_export n ON n.owner = m.registry AND n.kind = 'registration'
GROUP BY a.animal;

CREATE MACRO grace_days() AS 30;
CREATE MACRO new_enough(exported, since, change) AS
  exported >= since + grace_days() AND exported >= coalesce(change, DATE '0001-01-01') - 7;

CREATE VIEW registries AS
SELECT a.animal, o.exported, l.day AS change
FROM animal a JOIN oldest_registry o USING (animal) LEFT JOIN last_change l USING (animal);

-- Sources of which a further export is to be expected: they sent one within a year.
CREATE VIEW waited_for AS
FROM newest_export WHERE exported >= getvariable('as_of')::DATE - 365;

CREATE TABLE last_learnt AS
WITH news AS (
  SELECT animal, day FROM last_change
  UNION ALL
  SELECT s.animal, s.first_stated FROM statement s JOIN source e ON e.id = s.source WHERE e.kind <> 'registration')
SELECT animal, max(day) AS day FROM news GROUP BY animal;

-- Who knows an animal and may have more to tell, by the newest export.
CREATE TABLE knows AS
SELECT DISTINCT s.animal, w.source, w.owner, w.exported FROM statement s JOIN waited_for w USING (source);

CREATE VIEW not_heard AS
SELECT k.* FROM knows k JOIN last_learnt l USING (animal) WHERE k.exported < l.day - 7;

-- The day up to which the registries that may hold all of an animal's numbers sent everything; none when one of the
-- numbers has no registry, or one of the registries sends a slice, or nothing, or does not speak for the number. The
-- sources of registries speak for the ranges that the directory gives their registry.
CREATE TABLE registry_of_number AS
SELECT c.animal, c.number, m.registry, max(n.full_exported) AS up_to
FROM carried c LEFT JOIN may_hold m ON m.number = c.number
LEFT JOIN given_to g ON g.registry = m.registry AND g.number = c.number
LEFT JOIN newest_export n ON n.owner = g.registry AND n.kind = 'registration' AND n.whole
GROUP BY ALL;

CREATE TABLE covered_up_to AS
SELECT animal, CASE WHEN bool_and(up_to IS NOT NULL) THEN min(up_to) END AS day
FROM registry_of_number GROUP BY animal;

CREATE TABLE judged_registration AS
WITH closest AS (
  SELECT l.*, k.start, (
    SELECT min(CASE verdict(l.who, v.who)
      WHEN 'same' THEN 1 WHEN 'details differ' THEN 2 WHEN 'same household' THEN 3 WHEN 'cannot tell' THEN 4 ELSE 5 END)
    FROM keeper_version v WHERE v.animal = l.animal) AS closeness
  FROM live_registration l JOIN keeper k USING (animal)),
judged AS (
  SELECT *,
    (closeness < 5 AND who.kind <> 'nobody') OR (who.kind = 'organisation' AND EXISTS (
      FROM trail t JOIN organisation o ON o.id IN (t.giver.organisation, t.who.organisation)
      WHERE t.animal = c.animal AND o.id = c.who.organisation AND o.stays_primary)) AS acceptable
  FROM closest c)
SELECT *, NOT acceptable AND who.kind <> 'nobody' AND (
  who.kind = 'organisation'
  OR EXISTS (FROM trail t WHERE t.animal = j.animal AND (one_person_or_household(j.who, t.giver)
    OR (t.day < j.start AND one_person_or_household(j.who, t.who))))
  OR EXISTS (FROM visit v WHERE v.animal = j.animal AND v.day < j.start AND one_person_or_household(j.who, v.who))
  OR day <= start) AS from_before
FROM judged j;
