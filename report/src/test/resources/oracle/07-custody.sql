-- The trail of each animal, its custodian, and what is known of its keeper.

CREATE MACRO order_on_one_day(basis) AS CASE
  WHEN basis = 'birth' THEN 1
  WHEN basis = 'import' THEN 2
  WHEN basis IN ('intake-stray', 'intake-surrender', 'intake-seizure', 'sale-returned', 'adoption-returned') THEN 3
  WHEN basis = 'stray-hold-ended' THEN 4
  WHEN basis = 'transfer' THEN 5
  WHEN basis IN ('foster', 'boarding', 'trial-started') THEN 6
  WHEN basis = 'sale' THEN 7
  WHEN basis = 'adoption' THEN 8
  WHEN basis = 'trial-finalised' THEN 9
  ELSE 10 END; -- return to owner, return to colony

CREATE TABLE trail AS
SELECT *, row_number() OVER (PARTITION BY animal
  ORDER BY day, order_on_one_day(basis), source, key, slot, told_on, natural_order(number)) AS place
FROM statement WHERE fact = 'handed over';

CREATE TABLE visit AS
SELECT *, row_number() OVER (PARTITION BY animal
  ORDER BY day, source, key, slot, told_on, natural_order(number)) AS place
FROM statement WHERE fact = 'attended' AND who.kind <> 'nobody';

-- Handovers that move custody: not for a time, and not a return to an owner who is not named.
CREATE VIEW handover AS
SELECT t.*, e.owner FROM trail t JOIN source e ON e.id = t.source
WHERE NOT for_a_time(t.basis) AND NOT (t.basis = 'return-to-owner' AND t.who.kind = 'nobody');

-- One handover told by two organisations: the later telling counts for nothing.
CREATE TABLE repeated AS
SELECT DISTINCT later.id
FROM handover later JOIN handover earlier ON earlier.animal = later.animal AND earlier.place < later.place
WHERE earlier.owner <> later.owner AND later.day <= earlier.day + handover_window()
  AND (earlier.giver.kind = 'nobody' OR later.giver.kind = 'nobody'
    OR one_person_or_household(earlier.giver, later.giver))
  AND (later.who.kind = 'nobody' OR one_person_or_household(earlier.who, later.who))
  AND (one_person_or_household(earlier.giver, later.giver) OR one_person_or_household(earlier.who, later.who))
  AND NOT EXISTS (FROM trail b WHERE b.animal = later.animal AND NOT for_a_time(b.basis)
    AND b.place > earlier.place AND b.place < later.place AND one_person_or_household(b.who, later.giver));

CREATE TABLE counted_handover AS SELECT * FROM handover ANTI JOIN repeated USING (id);

-- Those of the last day, and which of them nobody passed on that day.
CREATE TABLE of_last_day AS
WITH last_day AS (
  SELECT * FROM counted_handover QUALIFY rank() OVER (PARTITION BY animal ORDER BY day DESC) = 1)
SELECT *, NOT EXISTS (FROM last_day o WHERE o.animal = l.animal AND o.id <> l.id
  AND one_person_or_household(l.who, o.giver)) AS is_last
FROM last_day l;

CREATE TABLE with_whom_it_was AS
SELECT c.animal, c.who FROM counted_handover c JOIN (SELECT animal, min(day) AS day FROM of_last_day GROUP BY animal) l
  ON l.animal = c.animal AND c.day < l.day
QUALIFY row_number() OVER (PARTITION BY c.animal ORDER BY c.place DESC) = 1;

-- Candidates for the last handover: those that are last of their day; with none, the one that brings the animal where it
-- was, if it is the only one; else all of the day.
CREATE TABLE candidate AS
WITH last_of_day AS (SELECT * FROM of_last_day WHERE is_last),
come_back AS (
  SELECT l.* FROM of_last_day l ANTI JOIN last_of_day USING (animal)
  JOIN with_whom_it_was w ON w.animal = l.animal AND one_person_or_household(l.who, w.who)
  QUALIFY count(*) OVER (PARTITION BY l.animal) = 1)
FROM last_of_day
UNION ALL FROM come_back
UNION ALL SELECT l.* FROM of_last_day l ANTI JOIN last_of_day USING (animal) ANTI JOIN come_back USING (animal);

-- The last of the candidates. They may be several: when not all of them name whom the first names, and two of them do not
-- agree on who has the animal, custody is in doubt.
CREATE TABLE last_handover AS
WITH of_one_mind AS (
  SELECT c.animal FROM candidate c
  JOIN (FROM candidate QUALIFY row_number() OVER (PARTITION BY animal ORDER BY place) = 1) f USING (animal)
  GROUP BY c.animal HAVING bool_and(c.is_last AND (c.id = f.id OR one_person_or_household(f.who, c.who)))
    AND any_value(f.who.kind) <> 'nobody'),
at_odds AS (
  SELECT DISTINCT a.animal FROM candidate a JOIN candidate b ON b.animal = a.animal AND b.place > a.place
  WHERE NOT one_person_or_household(a.who, b.who))
SELECT c.*, c.animal IN (FROM at_odds) AND c.animal NOT IN (FROM of_one_mind) AS in_doubt
FROM candidate c QUALIFY row_number() OVER (PARTITION BY animal ORDER BY place DESC) = 1;

-- By the last handover; without one, by the earliest visit that names somebody. The client of a sale that was returned
-- is who gave the animal back, not who has it since.
CREATE TABLE first_custodian AS
WITH by_handover AS (FROM last_handover),
by_visit AS (
  SELECT * FROM visit
  QUALIFY row_number() OVER (PARTITION BY animal ORDER BY place) = 1)
SELECT animal, id, who, source, CASE WHEN basis <> 'sale-returned' THEN client END AS client,
  day AS start, first_stated AS known_since
FROM by_handover
UNION ALL
SELECT animal, id, who, source, client, day, first_stated FROM by_visit ANTI JOIN by_handover USING (animal);

-- Two visits of one client, 60 days apart at least, of a person whom the trail never names as a holder.
CREATE TABLE visits_of_one_client AS
SELECT a.animal, a.id, a.who, a.source, a.client, a.day AS first_day, a.place AS first_place,
  b.day AS second_day, b.place AS second_place, greatest(a.first_stated, b.first_stated) AS known_since
FROM visit a JOIN visit b ON b.animal = a.animal AND b.day >= a.day + 60
WHERE a.who.kind = 'person'
  AND (coalesce(a.source = b.source AND a.client = b.client, false)
    OR verdict(a.who, b.who) IN ('same', 'details differ'))
  AND NOT EXISTS (FROM trail t WHERE t.animal = a.animal AND for_a_time(t.basis)
    AND one_person_or_household(t.who, a.who));

-- Everybody who is custodian at first or could become one, and what the records know of their details: what the start
-- says, what the same source says of the same client, and what every later visit says of somebody who is not different.
CREATE TABLE possible_custodian AS
SELECT animal, id, who, source, client, start FROM first_custodian
UNION
SELECT animal, id, who, source, client, first_day FROM visits_of_one_client;

CREATE TABLE version AS
SELECT p.id AS custodian, s.who, s.first_stated, s.day, s.source, s.key, s.slot
FROM possible_custodian p JOIN statement s ON s.id = p.id
UNION ALL
SELECT p.id, side.who, s.first_stated, s.day, s.source, s.key, s.slot
FROM possible_custodian p
JOIN statement s ON s.animal = p.animal AND s.source = p.source AND s.client = p.client,
  LATERAL (SELECT CASE WHEN s.basis = 'sale-returned' THEN s.giver ELSE s.who END AS who) side
WHERE side.who.kind = 'person'
UNION ALL
SELECT p.id, v.who, v.first_stated, v.day, v.source, v.key, v.slot
FROM possible_custodian p JOIN visit v ON v.animal = p.animal AND v.day >= p.start
WHERE not_different(p.who, v.who);

-- The visits of somebody who is different from every version of a custodian.
CREATE TABLE visit_of_another AS
SELECT p.id AS custodian, v.id AS visit
FROM possible_custodian p JOIN visit v ON v.animal = p.animal
JOIN version o ON o.custodian = p.id
GROUP BY p.id, v.id HAVING bool_and(verdict(o.who, v.who) = 'different');

CREATE TABLE next_custodian AS
SELECT p.id AS custodian, v.*
FROM possible_custodian p
JOIN visits_of_one_client v ON v.animal = p.animal AND v.first_day > p.start
JOIN visit_of_another o ON o.custodian = p.id AND o.visit = v.id
WHERE NOT EXISTS (FROM visit w ANTI JOIN visit_of_another a ON a.custodian = p.id AND a.visit = w.id
  WHERE w.animal = p.animal AND w.day BETWEEN v.first_day AND v.second_day)
QUALIFY row_number() OVER (PARTITION BY p.id ORDER BY v.first_place, v.second_place) = 1;

CREATE TABLE custodian AS
WITH RECURSIVE followed AS (
  SELECT animal, 0 AS changes, id, who, source, client, start, known_since FROM first_custodian
  UNION ALL
  SELECT c.animal, c.changes + 1, n.id, n.who, n.source, n.client, n.first_day, n.known_since
  FROM followed c JOIN next_custodian n ON n.custodian = c.id)
SELECT * FROM followed QUALIFY row_number() OVER (PARTITION BY animal ORDER BY changes DESC) = 1;

CREATE VIEW in_doubt AS SELECT animal, owner AS organisation FROM last_handover WHERE in_doubt;

CREATE TABLE keeper AS
SELECT * FROM custodian WHERE who.kind = 'person' AND animal NOT IN (SELECT animal FROM in_doubt);

CREATE TABLE keeper_version AS
SELECT k.animal, v.* EXCLUDE (custodian) FROM keeper k JOIN version v ON v.custodian = k.id;

-- The freshest: a source's first export tells what has been so for long, so there the day of the statement counts.
CREATE TABLE newest_version AS
WITH first_export AS (SELECT source, min(exported) AS day FROM counted_export GROUP BY source),
first_said AS (
  SELECT * FROM keeper_version
  QUALIFY row_number() OVER (PARTITION BY animal, who.wording ORDER BY first_stated, day, source, key, slot) = 1)
SELECT f.animal, f.who, f.first_stated FROM first_said f JOIN first_export e USING (source)
QUALIFY row_number() OVER (PARTITION BY f.animal
  ORDER BY CASE WHEN f.first_stated = e.day THEN least(f.first_stated, f.day) ELSE f.first_stated END DESC,
    f.day DESC, f.source DESC, f.key DESC, f.slot DESC) = 1;
