-- The trail of each animal, its custodian, and what is known of its keeper.

CREATE MACRO for_a_time(basis) AS basis IN ('intake-stray', 'intake-seizure', 'foster', 'boarding', 'trial-started');
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

-- By the last handover that is not for a time; without one, by the earliest visit that names somebody.
CREATE TABLE first_custodian AS
WITH by_handover AS (
  SELECT * FROM trail
  WHERE NOT for_a_time(basis) AND NOT (basis = 'return-to-owner' AND who.kind = 'nobody')
  QUALIFY row_number() OVER (PARTITION BY animal ORDER BY place DESC) = 1),
by_visit AS (
  SELECT * FROM visit
  QUALIFY row_number() OVER (PARTITION BY animal ORDER BY place) = 1)
SELECT animal, id, who, source, client, day AS start, first_stated AS known_since FROM by_handover
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

CREATE TABLE keeper AS SELECT * FROM custodian WHERE who.kind = 'person';

CREATE TABLE keeper_version AS
SELECT k.animal, v.* EXCLUDE (custodian) FROM keeper k JOIN version v ON v.custodian = k.id;

CREATE TABLE newest_version AS
WITH first_said AS (
  SELECT * FROM keeper_version
  QUALIFY row_number() OVER (PARTITION BY animal, who.wording ORDER BY first_stated, day, source, key, slot) = 1)
SELECT animal, who, first_stated FROM first_said
QUALIFY row_number() OVER (PARTITION BY animal
  ORDER BY first_stated DESC, day DESC, source DESC, key DESC, slot DESC) = 1;
