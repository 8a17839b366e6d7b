-- Chip numbers, by docs/chip-numbers.md, as far as the scenario's exports need it: grouping signs, an apostrophe, a
-- trailing ".0", the three kinds, one letter or more mistaken for digits, lost leading zeros. Words of hexadecimal
-- digits, country letters, several numbers in a cell and digits of other scripts do not occur and are not read here.

-- Upper case, without the signs that group digits.
CREATE MACRO plain_number(cell) AS
  upper(regexp_replace(regexp_replace(said(cell), '^''|\.0$', '', 'g'), '[\s.*-]', '', 'g'));

CREATE MACRO is_placeholder(n) AS
  n IS NULL OR regexp_full_match(n, '0+|9+') OR n IN ('NONE', '123456789012345', '?')
    OR (length(n) IN (9, 10, 15) AND n = repeat(n[1], length(n)));

-- 15 digits under a country's, a manufacturer's or the test code, with a national code of at most 38 bits; nine
-- digits; ten hexadecimal characters, one of them a digit at least.
CREATE MACRO is_number(n) AS
  (regexp_full_match(n, '\d{15}') AND n[1:3] NOT IN ('000', '001', '002', '003') AND n[1:3] NOT BETWEEN '895' AND '899'
    AND n[4:15] <= '274877906943')
  OR regexp_full_match(n, '\d{9}')
  OR (regexp_full_match(n, '[0-9A-F]{10}') AND regexp_matches(n, '\d') AND regexp_matches(n, '[A-F]'));

-- Ten letters and digits, both at least once: possible, though no hexadecimal number.
CREATE MACRO ten_characters(n) AS
  regexp_full_match(n, '[0-9A-Z]{10}') AND regexp_matches(n, '\d') AND regexp_matches(n, '[A-Z]');

-- O for 0, I and L for 1, S for 5, B for 8; a letter of ten characters may also be meant, so that such a number has
-- a repaired and an unrepaired candidate.
CREATE MACRO letters_repaired(n) AS translate(n, 'OILSB', '01158');
CREATE MACRO repairs(n) AS list_distinct(list_filter(
  [CASE WHEN length(n) IN (9, 15) THEN letters_repaired(n) END,
   CASE WHEN length(n) = 10 THEN translate(n, 'OILS', '0115') END,
   CASE WHEN length(n) = 8 THEN '0' || n END],
  lambda candidate: is_number(candidate)) || CASE WHEN ten_characters(n) THEN [n] ELSE [] END);

-- The order of numbers: by kind, then by value.
CREATE MACRO natural_order(n) AS (CASE length(n) WHEN 15 THEN '0' WHEN 9 THEN '1' ELSE '2' END) || n;

-- One slip apart: one digit differs, or two neighbouring digits changed places.
CREATE MACRO slips(a, b) AS list_filter(range(1, length(a) + 1), lambda i: a[i] <> b[i]);
CREATE MACRO one_slip(a, b) AS length(a) = length(b) AND CASE len(slips(a, b))
  WHEN 1 THEN true
  WHEN 2 THEN slips(a, b)[2] = slips(a, b)[1] + 1 AND a[slips(a, b)[1]] = b[slips(a, b)[2]]
    AND a[slips(a, b)[2]] = b[slips(a, b)[1]]
  ELSE false END;

-- Six zeros or more at the end of 15 digits may be what a spreadsheet left of others; it rounds the last digit that it
-- keeps, or cuts.
CREATE MACRO ends_in_zeros(n) AS regexp_full_match(n, '\d{9}0{6}');
CREATE MACRO zeros(n) AS length(n) - length(rtrim(n, '0'));
CREATE MACRO has_the_lost_digits(now, cut) AS ends_in_zeros(cut) AND regexp_full_match(now, '\d{15}')
  AND CASE WHEN ends_in_zeros(cut) AND regexp_full_match(now, '\d{15}')
    THEN now::BIGINT >= cut::BIGINT - 5 * (10 ** (zeros(cut) - 1))::BIGINT
      AND now::BIGINT < cut::BIGINT + (10 ** zeros(cut))::BIGINT
    ELSE false END;

CREATE VIEW number_cell AS
SELECT chip AS cell FROM patient UNION SELECT chip2 FROM patient UNION SELECT chip FROM stay
UNION SELECT chip FROM movement UNION SELECT chip FROM sale UNION SELECT chip FROM registration_row
UNION SELECT chip FROM report_row UNION SELECT NULL;

-- What a cell says: a number; nothing; a damaged number with its candidates (none when digits are lost); or nonsense,
-- for which the whole row is put aside.
CREATE TABLE number_read AS
SELECT cell, n,
  CASE
    WHEN is_placeholder(n) THEN 'nothing'
    WHEN is_number(n) THEN 'number'
    WHEN len(repairs(n)) > 0 OR regexp_full_match(cell, '\d\.\d+E\+\d+') THEN 'damaged'
    ELSE 'nonsense'
  END AS reading,
  CASE WHEN is_placeholder(n) OR is_number(n) THEN [] ELSE repairs(n) END AS candidates
FROM (SELECT cell, plain_number(cell) AS n FROM number_cell);

-- A row whose first number is none speaks of the second.
UPDATE patient SET chip = chip2, chip2 = NULL
WHERE said(chip2) IS NOT NULL AND EXISTS (FROM number_read r WHERE r.cell IS NOT DISTINCT FROM chip AND r.reading = 'nothing');
