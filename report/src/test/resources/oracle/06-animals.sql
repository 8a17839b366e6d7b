-- Numbers that are one animal's, and what is said of animals once everything is placed.

-- Numbers that lost digits: they end in zeros, and no two organisations' sources speak of them, or some source has two
-- animals under one (by its own ids, else by its records).
CREATE TABLE taken_at_its_word AS
WITH zeros AS (
  SELECT i.subject, i.source, i.key, e.owner, i.fact, i.other FROM in_effect i JOIN source e ON e.id = i.source
  WHERE i.about = 'chip' AND ends_in_zeros(i.subject)),
own_animal AS (
  SELECT subject, source, owner,
    coalesce('id ' || max(CASE WHEN fact = 'linked' THEN other END), 'record ' || key) AS own
  FROM zeros GROUP BY subject, source, owner, key),
per_source AS (
  SELECT subject, source, owner, count(DISTINCT own) AS animals FROM own_animal GROUP BY ALL)
SELECT subject AS number FROM per_source GROUP BY subject HAVING count(DISTINCT owner) > 1 AND max(animals) = 1;

CREATE TABLE cut_number AS
SELECT DISTINCT number FROM (
  SELECT subject AS number FROM in_effect WHERE about = 'chip' UNION SELECT other FROM in_effect WHERE fact = 'paired')
WHERE ends_in_zeros(number) AND number NOT IN (FROM taken_at_its_word);

-- What is said of numbers that are none is said of no animal.
CREATE VIEW of_numbers AS
SELECT * FROM in_effect WHERE NOT (about = 'chip' AND subject IN (FROM cut_number));

-- One animal's numbers, told by the lowest of them: by the pairings between numbers that were read, ...
CREATE TABLE pairing AS
SELECT DISTINCT subject AS a, other AS b FROM of_numbers
WHERE fact = 'paired' AND about = 'chip' AND other NOT IN (FROM cut_number);

CREATE TABLE number AS
SELECT subject AS number FROM of_numbers WHERE about = 'chip'
UNION SELECT other FROM of_numbers WHERE fact = 'paired' AND other NOT IN (FROM cut_number);

CREATE TABLE read_together AS
WITH RECURSIVE reached AS (
  SELECT number AS a, number AS b FROM number
  UNION
  SELECT r.a, p.b FROM reached r JOIN pairing p ON p.a = r.b)
SELECT a AS number, arg_min(b, natural_order(b)) AS animal FROM reached GROUP BY a;

-- What was said of an animal by its id joins the lowest number that the same source links to that id, if all of those
-- numbers are one animal's.
CREATE TABLE link AS
WITH lowest AS (
  SELECT source, other AS animal_id, arg_min(subject, natural_order(subject)) AS number
  FROM of_numbers JOIN read_together ON number = subject WHERE fact = 'linked'
  GROUP BY source, other HAVING count(DISTINCT animal) = 1)
SELECT l.*, min(s.first_stated) AS linked_since
FROM lowest l JOIN of_numbers s ON s.fact = 'linked' AND s.source = l.source AND s.other = l.animal_id
  AND s.subject = l.number
GROUP BY ALL;

-- What was said of a damaged number joins the only candidate that other sources speak of.
CREATE TABLE known_candidate AS
WITH candidate AS (
  SELECT DISTINCT source, subject, unnest(candidates) AS number FROM told WHERE about = 'damaged')
SELECT c.source, c.subject, c.number, min(s.first_stated) AS known_since
FROM candidate c JOIN of_numbers s ON s.about = 'chip' AND s.subject = c.number AND s.source <> c.source
GROUP BY ALL;

CREATE TABLE repaired AS
SELECT source, subject, any_value(number) AS number, any_value(known_since) AS known_since
FROM known_candidate GROUP BY source, subject HAVING count(*) = 1;

-- What could join several numbers joins none; since when that is so is a change for the animals of all of them.
CREATE TABLE doubt AS
WITH could_join AS (
  SELECT 'damaged' AS about, source, subject, number, known_since FROM known_candidate
  UNION ALL
  SELECT 'animal', l.source, l.other, l.subject, min(l.first_stated)
  FROM of_numbers l JOIN told s ON s.about = 'animal' AND s.source = l.source AND s.subject = l.other
  ANTI JOIN link k ON k.source = l.source AND k.animal_id = l.other
  WHERE l.fact = 'linked' GROUP BY ALL),
second AS (
  SELECT about, source, subject, list_sort(list(known_since))[2] AS day FROM could_join GROUP BY ALL HAVING count(*) > 1)
SELECT DISTINCT j.number, s.day FROM second s JOIN could_join j USING (about, source, subject);

-- Where statements belong: to the number that they speak of, or the one that they find, and since when.
CREATE TABLE place AS
SELECT DISTINCT source, 'chip' AS about, subject, subject AS number, DATE '0001-01-01' AS since FROM told
WHERE about = 'chip'
UNION ALL SELECT source, 'animal', animal_id, number, linked_since FROM link
UNION ALL SELECT source, 'damaged', subject, number, known_since FROM repaired;

CREATE TABLE placed AS
SELECT p.number, s.* EXCLUDE (candidates) REPLACE (greatest(s.first_stated, p.since) AS first_stated)
FROM of_numbers s JOIN place p USING (source, about, subject)
WHERE s.fact <> 'paired' OR s.other <> p.number;

-- ... and by those that found their number, too.
CREATE TABLE carried AS
WITH RECURSIVE either_way AS (
  SELECT number AS a, other AS b FROM placed WHERE fact = 'paired' AND other NOT IN (FROM cut_number)
  UNION SELECT other, number FROM placed WHERE fact = 'paired' AND other NOT IN (FROM cut_number)),
reached AS (
  SELECT number AS a, number AS b FROM number
  UNION
  SELECT r.a, p.b FROM reached r JOIN either_way p ON p.a = r.b)
SELECT a AS number, arg_min(b, natural_order(b)) AS animal FROM reached GROUP BY a;

CREATE TABLE statement AS
SELECT row_number() OVER () AS id, c.animal, p.* FROM placed p JOIN carried c USING (number);

-- Deaths that somebody else's later records contradict: they saw the animal, chipped it, or it changed hands.
CREATE MACRO handover_window() AS 3;
CREATE MACRO for_a_time(basis) AS basis IN ('intake-stray', 'intake-seizure', 'foster', 'boarding', 'trial-started');

CREATE TABLE death AS
SELECT d.*, e.owner, e.kind AS told_by, EXISTS (
  FROM statement s JOIN source o ON o.id = s.source
  WHERE s.animal = d.animal AND o.owner <> e.owner AND s.day > d.day + handover_window()
    AND ((s.fact = 'attended' AND s.who.kind <> 'nobody') OR s.fact = 'implanted'
      OR (s.fact = 'handed over' AND NOT for_a_time(s.basis)))) AS contradicted
FROM statement d JOIN source e ON e.id = d.source WHERE d.fact = 'died';

CREATE TABLE animal AS
SELECT animal, count(*) AS numbers,
  EXISTS (FROM death d WHERE d.animal = c.animal AND NOT d.contradicted) AS dead,
  EXISTS (FROM death d WHERE d.animal = c.animal)
    AND NOT EXISTS (FROM death d WHERE d.animal = c.animal AND NOT d.contradicted) AS death_unclear
FROM carried c GROUP BY animal;
