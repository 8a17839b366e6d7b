-- How the patients of some clinics, as one group, are counted, by docs/scorecard.md. The variable clinics names them.
-- Runs after the other scripts, as often as it is asked.

CREATE OR REPLACE MACRO of_group(owner) AS list_contains(getvariable('clinics'), owner);

-- What the listed records of clinics say, the group's and others'.
CREATE OR REPLACE TABLE clinic_note AS
SELECT s.*, e.owner FROM statement s JOIN source e ON e.id = s.source AND e.kind = 'patient'
ANTI JOIN unlisted u ON u.source = s.source AND u.key = s.key AND u.about = s.about AND u.subject = s.subject;

CREATE OR REPLACE TABLE sight AS
SELECT * FROM clinic_note WHERE fact IN ('attended', 'scanned') AND day >= getvariable('as_of')::DATE - 548;

-- An animal's own clinics: those that saw it on the most days.
CREATE OR REPLACE TABLE home AS
WITH counted AS (SELECT animal, owner, count(DISTINCT day) AS days FROM sight GROUP BY ALL),
own AS (SELECT * FROM counted QUALIFY days = max(days) OVER (PARTITION BY animal))
SELECT animal, bool_and(of_group(owner)) AS all_of_group, bool_or(of_group(owner)) AS some_of_group
FROM own GROUP BY animal;

-- Of each clinic's record its present word on the client, if it was said or the visit was made in the last year, and
-- the client may be the keeper.
CREATE OR REPLACE TABLE confirmed AS
WITH present AS (
  SELECT * FROM clinic_note WHERE fact = 'attended'
  QUALIFY row_number() OVER (PARTITION BY animal, source, key ORDER BY told_on DESC, day DESC) = 1)
SELECT p.animal, p.who FROM present p
WHERE p.who.kind = 'person' AND greatest(p.day, p.told_on) >= getvariable('as_of')::DATE - 365
  AND EXISTS (FROM keeper_version v WHERE v.animal = p.animal AND not_different(v.who, p.who));

-- From when on the keeper has been known as the freshest version has it.
CREATE OR REPLACE TABLE fresh AS
WITH first_export AS (SELECT source, min(exported) AS day FROM counted_export GROUP BY source),
said AS (
  SELECT v.animal, v.who.wording AS wording,
    min(CASE WHEN v.first_stated = e.day THEN least(v.first_stated, v.day) ELSE v.first_stated END) AS day
  FROM keeper_version v JOIN first_export e USING (source) WHERE v.who.kind = 'person' GROUP BY ALL)
SELECT animal, max(day) AS day FROM said GROUP BY animal;

CREATE OR REPLACE TABLE agreeing AS
SELECT DISTINCT l.animal FROM live_registration l JOIN confirmed c USING (animal)
WHERE l.who.kind = 'person' AND phone_or_mail_agrees(l.who.details, c.who.details);

CREATE OR REPLACE TABLE callable AS
SELECT DISTINCT animal FROM live_registration
WHERE who.kind = 'person' AND (who.details.phone IS NOT NULL OR who.details.email IS NOT NULL);

CREATE OR REPLACE TABLE scored AS
WITH patient AS (
  SELECT animal, bool_or(about <> 'damaged') AS numbered FROM clinic_note WHERE of_group(owner) GROUP BY animal),
active AS (SELECT DISTINCT animal FROM sight WHERE of_group(owner))
SELECT p.animal, CASE
  WHEN NOT p.numbered THEN 'no-number'
  WHEN NOT h.some_of_group THEN 'referral'
  WHEN NOT h.all_of_group THEN 'home-not-known'
  WHEN p.animal IN (SELECT animal FROM number_on_two_animals) THEN 'two-animals'
  WHEN p.animal IN (SELECT animal FROM in_doubt) THEN 'keeper-not-known'
  WHEN c.who.kind = 'organisation' THEN 'in-care'
  WHEN k.animal IS NULL THEN 'keeper-not-known'
  WHEN NOT new_enough(r.exported, greatest(k.start, f.day), r.change) THEN 'registry-not-known'
  WHEN p.animal NOT IN (SELECT animal FROM live_registration) THEN
    CASE WHEN u.day >= greatest(k.start, f.day) + grace_days() THEN 'not-registered' ELSE 'registry-not-known' END
  WHEN p.animal IN (FROM agreeing) THEN 'reachable'
  WHEN p.animal NOT IN (FROM callable) THEN 'no-details'
  WHEN p.animal NOT IN (SELECT animal FROM confirmed) THEN 'not-confirmed'
  ELSE 'other-details' END AS reach
FROM patient p JOIN active USING (animal) JOIN home h USING (animal) JOIN animal a USING (animal)
JOIN registries r USING (animal) LEFT JOIN covered_up_to u USING (animal)
LEFT JOIN custodian c USING (animal) LEFT JOIN keeper k USING (animal) LEFT JOIN fresh f USING (animal)
WHERE NOT a.dead;
