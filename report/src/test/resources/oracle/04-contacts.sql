-- Who is who, and who is nobody. What two contacts are to each other, the oracle asks the program's own judge
-- (judged_by_the_program, registered by withers.oracle.Judge). Phones: the coast's are all numbers of the North American plan, written
-- with and without country code and with several signs, so the last ten digits are the number. strip_accents takes off
-- accents that Unicode takes apart (ł and ø stay, in every source alike).

CREATE MACRO folded(words) AS lower(strip_accents(words));
CREATE MACRO letters_and_digits(words) AS regexp_replace(folded(words), '[^\p{L}\p{N}]', '', 'g');
CREATE MACRO words_in_order(name) AS coalesce(list_filter(
  regexp_split_to_array(regexp_replace(folded(name), '[''’.]', '', 'g'), '[^\p{L}\p{N}]+'),
  lambda word: word <> ''), []);
-- Words that stand where a name should: no name at all.
CREATE MACRO is_placeholder_name(name) AS array_to_string(words_in_order(name), ' ') IN (
  'unknown', 'not known', 'owner', 'owner unknown', 'unknown owner', 'new owner', 'no owner', 'none', 'no name', 'n a',
  'na', 'nil', 'test', 'tba', 'tbc', 'tbd', 'to be confirmed', 'to be advised', 'xxx', 'xx', 'x', 'client', 'customer',
  'cash', 'cash sale', 'pending', 'stray', 'finder');
CREATE MACRO states_a_name(name) AS len(words_in_order(name)) > 0 AND NOT is_placeholder_name(name);
CREATE MACRO digits(words) AS regexp_replace(words, '\D', '', 'g');
CREATE MACRO phone_number(phone) AS CASE
  WHEN regexp_full_match(digits(phone), '1?\d{10}') AND digits(phone) <> repeat(digits(phone)[1], length(digits(phone)))
  THEN right(digits(phone), 10) END;
CREATE MACRO mail_address(email) AS CASE WHEN contains(email, '@') THEN lower(email) END;
CREATE MACRO address_of(street, postcode) AS
  CASE WHEN street IS NOT NULL AND postcode IS NOT NULL THEN letters_and_digits(postcode || ' ' || street) END;
CREATE MACRO full_name(who) AS coalesce(who.name, nullif(concat_ws(' ', who.given, who.family), ''));
-- As it is written, for the judge.
CREATE MACRO written(who) AS array_to_string(list_transform(
  [who.name, who.given, who.family, who.phone, who.email, who.street, who.postcode, who.town],
  lambda cell: coalesce(cell, '')), chr(31));
CREATE MACRO details(who) AS struct_pack(
  named := states_a_name(full_name(who)), phone := phone_number(who.phone), email := mail_address(who.email),
  address := address_of(who.street, who.postcode), written := written(who));

-- Nothing by which anybody could be known or reached.
CREATE MACRO states_nothing(d) AS NOT coalesce(d.named, false) AND d.phone IS NULL AND d.email IS NULL AND d.address IS NULL;
CREATE MACRO phone_or_mail_agrees(a, b) AS coalesce(a.phone = b.phone, false) OR coalesce(a.email = b.email, false);
CREATE MACRO verdict_on_details(a, b) AS judged_by_the_program(a.written, b.written);

-- Two of whoever: contacts as written (wording), and who they are (kind, organisation).
CREATE MACRO verdict(a, b) AS CASE
  WHEN a.kind = 'nobody' OR b.kind = 'nobody' THEN 'cannot tell'
  WHEN a.kind = 'person' AND b.kind = 'person' THEN
    CASE WHEN a.wording = b.wording THEN 'same' ELSE verdict_on_details(a.details, b.details) END
  WHEN a.kind <> 'person' AND b.kind <> 'person' AND a.organisation = b.organisation THEN 'same'
  ELSE 'different' END;
CREATE MACRO not_different(a, b) AS verdict(a, b) <> 'different';
-- Two parties agree: one organisation, or one person, or people of one household.
CREATE MACRO one_person_or_household(a, b) AS verdict(a, b) IN ('same', 'details differ', 'same household');

-- Everybody whom a row names, by source, since "own" is somebody else in each. A wording is a contact as it is written.
CREATE TABLE named_somebody AS
SELECT source, who FROM patient
UNION SELECT source, giver FROM stay UNION SELECT source, receiver FROM stay
UNION SELECT source, other FROM movement UNION SELECT source, buyer FROM sale
UNION SELECT source, keeper FROM registration_row UNION SELECT source, holder FROM report_row
UNION SELECT source, reporter FROM report_row UNION SELECT source, purchaser FROM supply_row
UNION SELECT id, own() FROM source UNION SELECT id, nobody() FROM source;

CREATE TABLE wording AS
SELECT DISTINCT who::VARCHAR AS wording, who, letters_and_digits(full_name(who)) AS name_key, details(who) AS details
FROM named_somebody;

-- The organisation that a wording stands for: by name, else by phone, else by e-mail, else as one of its carers.
CREATE TABLE directory_match AS
WITH carer_details AS (
  SELECT organisation, details(contact(name, phone, email, street, postcode, town)) AS details FROM carer),
matched AS (
  SELECT wording, 1 AS way, organisation FROM wording w
  JOIN organisation_name o ON w.name_key = letters_and_digits(o.name)
  UNION ALL
  SELECT wording, 2, id FROM wording w JOIN organisation o ON w.details.phone = phone_number(o.phone)
  UNION ALL
  SELECT wording, 3, id FROM wording w JOIN organisation o ON w.details.email = lower(o.email)
  UNION ALL
  SELECT wording, 4, organisation FROM wording w, carer_details c
  WHERE verdict_on_details(w.details, c.details) = 'same'
    OR (verdict_on_details(w.details, c.details) = 'details differ' AND phone_or_mail_agrees(w.details, c.details)))
SELECT wording, min(organisation) AS organisation, way FROM matched
GROUP BY wording, way QUALIFY row_number() OVER (PARTITION BY wording ORDER BY way) = 1;

-- Who they are. An organisation that is named as one, but stands in no directory, is outside.
CREATE TABLE someone AS
SELECT n.source, w.wording, struct_pack(
  wording := w.wording,
  kind := CASE
    WHEN n.who.kind = 'contact' AND m.organisation IS NULL AND states_nothing(w.details) THEN 'nobody'
    WHEN n.who.kind <> 'contact' OR m.organisation IS NOT NULL THEN 'organisation'
    ELSE 'person' END,
  organisation := CASE n.who.kind
    WHEN 'own' THEN s.owner
    WHEN 'organisation' THEN CASE WHEN m.way = 1 THEN m.organisation ELSE 'outside: ' || w.name_key END
    ELSE m.organisation END,
  details := w.details) AS someone
FROM named_somebody n
JOIN wording w ON w.wording = n.who::VARCHAR
JOIN source s ON s.id = n.source
LEFT JOIN directory_match m ON m.wording = w.wording;
