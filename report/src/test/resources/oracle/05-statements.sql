-- What the exports state, slot by slot, and what of it is in effect. Variables: as_of, known_by (dates).

-- Exports that count: those of the days that are known, and of registries those up to the day that is judged.
CREATE TABLE counted_export AS
SELECT DISTINCT e.source, e.exported, s.kind, s.sends, s.owner, s.whole
FROM export e JOIN source s ON s.id = e.source
WHERE e.exported <= getvariable('known_by')
  AND (s.kind <> 'registration' OR e.exported <= getvariable('as_of'));

-- One line for each slot that a row fills. The giver, and who receives, is client, primary or holder.
CREATE VIEW told_by_row AS
SELECT source, exported, key, chip, chip2, NULL AS animal_id, 'ANIMAL' AS slot, 'described' AS fact, NULL::DATE AS day,
  NULL AS basis, nobody() AS giver, nobody() AS who, NULL AS client, described::VARCHAR AS rest FROM patient
UNION ALL SELECT source, exported, key, chip, chip2, NULL, 'IMPLANT', 'implanted', implanted, NULL, nobody(), own(), NULL,
  NULL FROM patient WHERE implanted IS NOT NULL
UNION ALL SELECT source, exported, key, chip, chip2, NULL, 'SCAN', 'scanned', scanned, scan, nobody(), nobody(), NULL,
  NULL FROM patient WHERE scan IS NOT NULL
UNION ALL SELECT source, exported, key, chip, chip2, NULL, 'VISIT', 'attended', seen, NULL, nobody(), who, client, NULL
  FROM patient WHERE seen IS NOT NULL
UNION ALL SELECT source, exported, key, chip, chip2, NULL, 'DEATH', 'died', died, NULL, nobody(), nobody(), NULL, NULL
  FROM patient WHERE died IS NOT NULL
UNION ALL SELECT source, exported, key, chip, NULL, animal_id, 'ANIMAL', 'described', NULL, NULL, nobody(), nobody(),
  NULL, described::VARCHAR FROM stay
UNION ALL SELECT source, exported, key, chip, NULL, animal_id, 'INTAKE', 'handed over', in_day, in_basis, giver, own(),
  NULL, NULL FROM stay WHERE in_day IS NOT NULL
UNION ALL SELECT source, exported, key, chip, NULL, animal_id, 'OUTCOME', 'handed over', out_day, out_basis, own(),
  receiver, NULL, NULL FROM stay WHERE out_day IS NOT NULL AND out_basis <> 'died'
UNION ALL SELECT source, exported, key, chip, NULL, animal_id, 'DEATH', 'died', out_day, NULL, nobody(), nobody(), NULL,
  NULL FROM stay WHERE out_basis = 'died'
UNION ALL SELECT source, exported, key, chip, NULL, animal_id, 'ANIMAL', 'described', NULL, NULL, nobody(), nobody(),
  NULL, described::VARCHAR FROM movement
UNION ALL SELECT source, exported, key, chip, NULL, animal_id, 'MOVEMENT', 'handed over', day,
  CASE WHEN move LIKE 'transfer-%' THEN 'transfer' ELSE move END,
  CASE WHEN move IN ('import', 'intake-stray', 'intake-surrender', 'intake-seizure', 'transfer-in', 'adoption-returned')
    THEN other WHEN move = 'stray-hold-ended' THEN nobody() ELSE own() END,
  CASE WHEN move IN ('import', 'intake-stray', 'intake-surrender', 'intake-seizure', 'transfer-in', 'adoption-returned',
    'stray-hold-ended') THEN own() ELSE other END,
  NULL, NULL FROM movement WHERE day IS NOT NULL AND move <> 'died'
UNION ALL SELECT source, exported, key, chip, NULL, animal_id, 'DEATH', 'died', day, NULL, nobody(), nobody(), NULL, NULL
  FROM movement WHERE move = 'died'
UNION ALL SELECT source, exported, key, chip, NULL, NULL, 'ANIMAL', 'described', NULL, NULL, nobody(), nobody(), NULL,
  described::VARCHAR FROM sale
UNION ALL SELECT source, exported, key, chip, NULL, NULL, 'SALE', 'handed over', sold, 'sale', own(), buyer, client, NULL
  FROM sale WHERE sold IS NOT NULL
UNION ALL SELECT source, exported, key, chip, NULL, NULL, 'SALE_RETURN', 'handed over', returned, 'sale-returned', buyer,
  own(), client, NULL FROM sale WHERE returned IS NOT NULL
UNION ALL SELECT source, exported, key, chip, NULL, NULL, 'ANIMAL', 'described', NULL, NULL, nobody(), nobody(), NULL,
  described::VARCHAR FROM registration_row
UNION ALL SELECT source, exported, key, chip, NULL, NULL, 'REGISTRATION', 'registered', since, NULL, nobody(), keeper,
  NULL, concat_ws('|', account, second::VARCHAR) FROM registration_row
UNION ALL SELECT source, exported, key, chip, NULL, NULL, 'REGISTRATION_END', 'ended', ended, NULL, nobody(), nobody(),
  NULL, end_reason FROM registration_row WHERE ended IS NOT NULL OR end_reason IS NOT NULL
UNION ALL SELECT source, exported, key, chip, NULL, NULL, 'DEATH', 'died', ended, NULL, nobody(), nobody(), NULL, NULL
  FROM registration_row WHERE end_reason = 'died'
UNION ALL SELECT source, exported, key, chip, NULL, NULL, 'ANIMAL', 'described', NULL, NULL, nobody(), nobody(), NULL,
  described::VARCHAR FROM report_row
UNION ALL SELECT source, exported, key, chip, NULL, NULL, 'REPORT', report, day, NULL, nobody(),
  CASE report WHEN 'lost' THEN reporter ELSE holder END, NULL, NULL FROM report_row
UNION ALL SELECT source, exported, key, chip, NULL, NULL, 'REUNION', 'reunited', reunited, NULL, nobody(), nobody(),
  NULL, NULL FROM report_row WHERE reunited IS NOT NULL
UNION ALL SELECT source, exported, key, NULL, NULL, NULL, 'SUPPLY', 'supplied', day, NULL, nobody(), purchaser, NULL,
  box::VARCHAR FROM supply_row;

-- What the texts say that the rest of a statement consists of.
CREATE TABLE look AS
WITH described AS (
  SELECT described AS d FROM patient UNION SELECT described FROM stay UNION SELECT described FROM movement
  UNION SELECT described FROM sale UNION SELECT described FROM registration_row UNION SELECT described FROM report_row)
SELECT d::VARCHAR AS wording, d.species AS species, words_in_order(d.called) AS called, d.born AS born FROM described;
CREATE TABLE box AS
SELECT DISTINCT box::VARCHAR AS wording, box."first" AS first, box."last" AS last, box.prepaid AS prepaid FROM supply_row;

-- The rows that could not be understood: they say nothing, and do not tell either that their record is gone.
CREATE TABLE put_aside AS
WITH any_row AS (
  SELECT source, exported, key, chip, chip2, NULL AS animal_id, readable FROM patient
  UNION ALL SELECT source, exported, key, chip, NULL, animal_id, readable FROM stay
  UNION ALL SELECT source, exported, key, chip, NULL, animal_id, readable FROM movement
  UNION ALL SELECT source, exported, key, chip, NULL, NULL, readable FROM sale
  UNION ALL SELECT source, exported, key, chip, NULL, NULL, readable FROM registration_row
  UNION ALL SELECT source, exported, key, chip, NULL, NULL, readable FROM report_row
  UNION ALL SELECT source, exported, key, NULL, NULL, key, readable FROM supply_row)
SELECT DISTINCT source, exported, key
FROM any_row a JOIN number_read r ON r.cell IS NOT DISTINCT FROM a.chip
LEFT JOIN number_read r2 ON r2.cell = a.chip2
WHERE NOT a.readable OR r.reading = 'nonsense' OR coalesce(r2.reading, '') = 'nonsense' OR (r.reading = 'nothing' AND a.animal_id IS NULL);

-- The same, about what it speaks of: a number, a damaged number (subject: what it may be), an animal by its id, or a
-- range of numbers. A row
-- that names two numbers says of each that the other is on the same animal, if the other can be read; and of a second
-- one that is damaged how the animal is described.
CREATE TABLE told AS
WITH told_of AS (
  SELECT t.*, r.reading, r.n, r.candidates, r2.n AS n2, r2.reading AS reading2, r2.candidates AS candidates2
  FROM told_by_row t
  JOIN counted_export USING (source, exported)
  ANTI JOIN put_aside USING (source, exported, key)
  JOIN number_read r ON r.cell IS NOT DISTINCT FROM t.chip
  LEFT JOIN number_read r2 ON r2.cell = t.chip2 AND r2.reading IN ('number', 'damaged')),
about_what AS (
  SELECT *,
    CASE WHEN slot = 'SUPPLY' THEN 'range' WHEN reading = 'number' THEN 'chip' WHEN reading = 'damaged' THEN 'damaged'
      ELSE 'animal' END AS about,
    CASE WHEN slot = 'SUPPLY' THEN 'range' WHEN reading = 'nothing' THEN animal_id ELSE n END AS subject
  FROM told_of),
said AS (
  SELECT source, exported, key, slot, fact, day, basis, giver, who, client, NULL AS other, rest, about, subject,
    candidates
  FROM about_what
  UNION ALL
  SELECT source, exported, key, 'LINK', 'linked', NULL, NULL, nobody(), nobody(), NULL, animal_id, NULL, 'chip', n, []
  FROM told_of WHERE slot = 'ANIMAL' AND reading = 'number' AND animal_id IS NOT NULL
  UNION ALL
  SELECT source, exported, key, 'PAIRING', 'paired', NULL, NULL, nobody(), nobody(), NULL, n2, NULL, about, subject,
    candidates
  FROM about_what WHERE slot = 'ANIMAL' AND reading2 = 'number' AND n2 <> n
  UNION ALL
  SELECT source, exported, key, 'PAIRING', 'paired', NULL, NULL, nobody(), nobody(), NULL, n, NULL,
    CASE reading2 WHEN 'number' THEN 'chip' ELSE 'damaged' END, n2, candidates2
  FROM told_of WHERE slot = 'ANIMAL' AND reading = 'number' AND n2 <> n
  UNION ALL
  SELECT source, exported, key, 'ANIMAL', fact, day, basis, giver, who, client, NULL, rest, 'damaged', n2, candidates2
  FROM told_of WHERE slot = 'ANIMAL' AND reading2 = 'damaged' AND n2 <> n)
SELECT p.* EXCLUDE (giver, who), g.someone AS giver, w.someone AS who,
  concat_ws('|', p.fact, p.day, p.basis, p.giver::VARCHAR, p.who::VARCHAR, p.client, p.other, p.rest) AS content
FROM said p
JOIN someone g ON g.source = p.source AND g.wording = p.giver::VARCHAR
JOIN someone w ON w.source = p.source AND w.wording = p.who::VARCHAR;

-- Second numbers that are damaged beside a first that can be read.
CREATE VIEW damaged_second AS
SELECT d.* FROM told d JOIN told f USING (source, exported, key)
WHERE d.about = 'damaged' AND d.slot = 'PAIRING' AND f.about = 'chip' AND f.slot = 'ANIMAL';

-- A record, and the exports that state it.
CREATE TABLE stated AS SELECT DISTINCT source, key, about, subject, exported FROM told;

-- Where a record was left out: at the source's next export that speaks of everything, or of its key.
CREATE TABLE silence AS
WITH spoken AS (
  SELECT s.*, least(
    (SELECT min(e.exported) FROM counted_export e
      WHERE e.source = s.source AND e.exported > s.exported AND e.sends = 'full'
        AND NOT EXISTS (FROM put_aside a WHERE a.source = s.source AND a.key = s.key AND a.exported = e.exported)),
    (SELECT min(k.exported) FROM stated k
      WHERE k.source = s.source AND k.key = s.key AND k.exported > s.exported)) AS next
  FROM stated s)
SELECT source, key, about, subject, exported AS last_stated, next AS exported
FROM spoken p
WHERE next IS NOT NULL AND NOT EXISTS (FROM stated s WHERE s.source = p.source AND s.key = p.key AND s.about = p.about
  AND s.subject = p.subject AND s.exported = p.next);

-- The row names another number now, one slip away or with the digits that the number before had lost, or anything else
-- than the damaged number that it had: what it said before is withdrawn.
CREATE TABLE corrected AS
SELECT DISTINCT s.source, s.key, s.about, s.subject, s.exported
FROM silence s
JOIN stated now ON now.source = s.source AND now.key = s.key AND now.exported = s.exported
WHERE s.about = 'damaged' OR (s.about = 'chip' AND now.about = 'chip'
  AND (one_slip(s.subject, now.subject) OR has_the_lost_digits(now.subject, s.subject)));

-- A full export from which more than ten records, and more than a tenth of those of the full export before, are gone is
-- not believed: its disappearances wait for the source's next full export.
CREATE TABLE disappearance AS
WITH gone AS (
  SELECT * FROM silence ANTI JOIN corrected USING (source, key, about, subject, exported)),
full_export AS (
  SELECT source, exported, lag(exported) OVER (PARTITION BY source ORDER BY exported) AS before,
    lead(exported) OVER (PARTITION BY source ORDER BY exported) AS after
  FROM counted_export WHERE sends = 'full'),
withheld AS (
  SELECT f.source, f.exported, f.after
  FROM full_export f
  WHERE (SELECT count(*) FROM gone g WHERE g.source = f.source AND g.exported = f.exported) > 10
    AND (SELECT count(*) FROM gone g WHERE g.source = f.source AND g.exported = f.exported) * 10
      > (SELECT count(*) FROM stated s WHERE s.source = f.source AND s.exported = f.before)),
dated AS (
  SELECT g.*, CASE WHEN w.source IS NULL THEN g.exported ELSE w.after END AS effective
  FROM gone g LEFT JOIN withheld w USING (source, exported))
SELECT source, key, about, subject, effective AS exported FROM dated d
WHERE effective IS NOT NULL
  AND NOT EXISTS (FROM stated s WHERE s.source = d.source AND s.key = d.key AND s.about = d.about
    AND s.subject = d.subject AND s.exported > d.last_stated AND s.exported <= d.effective);

-- The records that are no longer listed.
CREATE TABLE unlisted AS
WITH last_stated AS (SELECT source, key, about, subject, max(exported) AS last FROM stated GROUP BY ALL)
SELECT source, key, about, subject
FROM disappearance d JOIN last_stated s USING (source, key, about, subject)
GROUP BY ALL HAVING max(d.exported) > any_value(s.last);

-- What was observed stays observed, whatever a later version of the record leaves empty.
CREATE MACRO observes(slot) AS slot IN ('VISIT', 'SCAN', 'REGISTRATION');

-- Taken back: every slot of a record that moved, and a slot that corrects and that the record's next version leaves empty.
CREATE TABLE withdrawal AS
SELECT DISTINCT t.source, t.key, t.about, t.subject, t.slot, c.exported
FROM told t JOIN corrected c USING (source, key, about, subject) WHERE c.exported > t.exported
UNION
SELECT source, key, about, subject, slot, next
FROM (SELECT t.*, (SELECT min(s.exported) FROM stated s WHERE s.source = t.source AND s.key = t.key
    AND s.about = t.about AND s.subject = t.subject AND s.exported > t.exported) AS next FROM told t) v
WHERE next IS NOT NULL AND NOT observes(slot) AND NOT EXISTS (FROM told u WHERE u.source = v.source AND u.key = v.key AND u.about = v.about
  AND u.subject = v.subject AND u.slot = v.slot AND u.exported = v.next);

-- In effect: not withdrawn since; equal neighbours are one; where a slot corrects, the last one only.
CREATE TABLE in_effect AS
WITH taken_back AS (
  SELECT source, key, about, subject, slot, max(exported) AS last FROM withdrawal GROUP BY ALL),
standing AS (
  SELECT t.* FROM told t LEFT JOIN taken_back b USING (source, key, about, subject, slot)
  WHERE b.last IS NULL OR t.exported >= b.last),
neighbours AS (
  SELECT *, lag(content) OVER slot_in_order IS DISTINCT FROM content AS begins
  FROM standing WINDOW slot_in_order AS (PARTITION BY source, key, about, subject, slot ORDER BY exported, content)),
begun AS (
  SELECT *, row_number() OVER (PARTITION BY source, key, about, subject, slot ORDER BY exported DESC, content DESC) AS back
  FROM neighbours WHERE begins)
SELECT source, key, slot, about, subject, candidates, fact, coalesce(day, exported) AS day, day AS stated_day, basis,
  giver, who, client, other, rest, exported AS first_stated, exported AS told_on, content
FROM begun
WHERE (observes(slot) OR back = 1) AND coalesce(day, exported) <= getvariable('as_of');
