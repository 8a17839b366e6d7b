-- From each source's columns and words to seven kinds of row. A row with a day that cannot be read, or a day of something
-- that is not named, says nothing.

CREATE MACRO said(cell) AS nullif(trim(cell), '');
CREATE MACRO a_day(cell, form) AS try_strptime(said(cell), form)::DATE;
CREATE MACRO days_readable(cells, form) AS
  len(list_filter(cells, lambda cell: said(cell) IS NOT NULL AND a_day(cell, form) IS NULL)) = 0;

CREATE MACRO both_or_none(day, word) AS (said(day) IS NULL) = (word IS NULL);

-- Somebody as a row names them: a contact with details, an organisation by its name, the sender itself, or nobody. A
-- contact's name stands in one column, or in two.
CREATE MACRO somebody(kind, name, given, family, phone, email, street, postcode, town) AS struct_pack(
  kind := kind, name := said(name), given := said(given), family := said(family), phone := said(phone),
  email := said(email), street := said(street), postcode := said(postcode), town := said(town));
CREATE MACRO contact(name, phone, email, street, postcode, town) AS
  somebody('contact', name, NULL, NULL, phone, email, street, postcode, town);
CREATE MACRO contact_of(given, family, phone, email, street, postcode, town) AS
  somebody('contact', NULL, given, family, phone, email, street, postcode, town);
CREATE MACRO named(organisation) AS somebody('organisation', organisation, NULL, NULL, NULL, NULL, NULL, NULL, NULL);
CREATE MACRO own() AS somebody('own', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL);
CREATE MACRO nobody() AS somebody('contact', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL);
CREATE MACRO named_or(organisation, other) AS CASE WHEN said(organisation) IS NULL THEN other ELSE named(organisation) END;

-- What an animal is, as a row describes it. A kind of animal that is none of ours is another one.
CREATE MACRO species_of(word) AS CASE lower(said(word))
  WHEN 'canine' THEN 'dog' WHEN 'd' THEN 'dog' WHEN 'feline' THEN 'cat' WHEN 'c' THEN 'cat'
  WHEN 'lagomorph' THEN 'rabbit' WHEN 'r' THEN 'rabbit' WHEN 'mustelid' THEN 'ferret' WHEN 'f' THEN 'ferret'
  ELSE CASE WHEN said(word) IS NULL THEN 'unstated'
    WHEN lower(said(word)) IN ('dog', 'cat', 'rabbit', 'ferret', 'horse', 'bird') THEN lower(said(word))
    ELSE 'other' END END;
CREATE MACRO looks(called, species, sex, born) AS struct_pack(
  called := said(called), species := species_of(species), sex := said(sex), born := born::DATE);

-- What a scanner found: the number, or nothing; a day alone tells that it was read.
CREATE MACRO scan_of(day, word) AS CASE WHEN day IS NOT NULL OR word IS NOT NULL THEN coalesce(word, 'read') END;

CREATE TABLE patient AS
SELECT 'vendlemouth-patients' AS source, exported, said("Patient No") AS key, "Microchip" AS chip,
  "Second microchip" AS chip2, said("Client No") AS client,
  a_day("Last seen", '%Y-%m-%d') AS seen, a_day("Died", '%Y-%m-%d') AS died,
  contact("Client", "Phone", "E-mail", "Address", "Postcode", "Town") AS who,
  looks("Patient", "Kind", "Sex", a_day("Born", '%Y-%m-%d')) AS described,
  a_day("Implanted", '%Y-%m-%d') AS implanted, a_day("Scanned", '%Y-%m-%d') AS scanned,
  scan_of(said("Scanned"), MAP {'number': 'read', 'nothing': 'not-detected'}[said("Scan result")]) AS scan,
  days_readable(["Born", "Implanted", "Last seen", "Scanned", "Died"], '%Y-%m-%d') AS readable
FROM vendlemouth_patients
UNION ALL
SELECT 'pellerwick-patients', exported, said("Record"), "Transponder", "Other transponder", said("Owner ref"),
  a_day("Last visit", '%d.%m.%Y'), a_day("Deceased on", '%d.%m.%Y'),
  contact_of("First name", "Surname", "Telephone", "Mail", "Street", "Code", "Place"),
  looks("Pet name", "Species", "Sex", a_day("Date of birth", '%d.%m.%Y')),
  a_day("Date of implant", '%d.%m.%Y'), a_day("Last scan", '%d.%m.%Y'),
  scan_of(said("Last scan"), MAP {'ok': 'read', 'no answer': 'not-detected'}[said("Scan")]),
  days_readable(["Date of birth", "Date of implant", "Last visit", "Last scan", "Deceased on"], '%d.%m.%Y')
FROM pellerwick_patients
UNION ALL
SELECT 'corvelsea-patients', exported, said("ID"), "CHIP", "CHIP 2", said("OWNER ID"),
  a_day("SEEN", '%m/%d/%Y'), a_day("DECEASED", '%m/%d/%Y'),
  contact("OWNER", "TEL", "EMAIL", "STREET", "POSTCODE", "TOWN"),
  looks("ANIMAL", "SPECIES", "SEX", a_day("DOB", '%m/%d/%Y')), a_day("CHIPPED", '%m/%d/%Y'), NULL, NULL,
  days_readable(["DOB", "CHIPPED", "SEEN", "DECEASED"], '%m/%d/%Y')
FROM corvelsea_patients
UNION ALL
SELECT 'nethersay-patients', exported, said("Card"), "Chip number", NULL, NULL,
  a_day("Last here", '%d/%m/%Y'), a_day("Dead since", '%d/%m/%Y'),
  contact("Keeper", "Keeper's phone", NULL, "House and street", "Postcode", "Village"),
  looks("Animal", "Species", NULL, NULL), a_day("Chip put in", '%d/%m/%Y'), NULL, NULL,
  days_readable(["Chip put in", "Last here", "Dead since"], '%d/%m/%Y')
FROM nethersay_patients;

CREATE TABLE stay AS
SELECT 'garrowness-stays' AS source, exported, said(stay) AS key, microchip AS chip, said(animal_id) AS animal_id,
  a_day(intake_date, '%Y-%m-%d') AS in_day,
  MAP {'STRAY': 'intake-stray', 'OWNER SURRENDER': 'intake-surrender', 'ADOPTION RETURN': 'adoption-returned',
    'TRANSFER IN': 'transfer'}[said(intake_type)] AS in_basis,
  named_or(intake_from_org, contact(intake_from, intake_phone, NULL, NULL, NULL, NULL)) AS giver,
  a_day(outcome_date, '%Y-%m-%d') AS out_day,
  MAP {'ADOPTION': 'adoption', 'RETURN TO OWNER': 'return-to-owner', 'TRANSFER OUT': 'transfer', 'FOSTER': 'foster',
    'TRIAL': 'trial-started', 'DIED IN CARE': 'died'}[said(outcome_type)] AS out_basis,
  named_or(outcome_to_org, contact(outcome_to, outcome_phone, outcome_email, outcome_address, outcome_postcode,
    outcome_town)) AS receiver,
  looks(name, species, sex, a_day(born, '%Y-%m-%d')) AS described,
  days_readable([born, intake_date, outcome_date], '%Y-%m-%d') AND both_or_none(intake_date, in_basis)
    AND both_or_none(outcome_date, out_basis) AS readable
FROM garrowness_stays
UNION ALL
SELECT 'ulverscar-stays', exported, said("Nr"), "Chip", NULL,
  a_day("Arrived", '%m/%d/%Y'),
  MAP {'found': 'intake-stray', 'given up': 'intake-surrender', 'came back': 'adoption-returned',
    'from shelter': 'transfer'}[said("How")] AS in_basis,
  named_or("From shelter", contact("From whom", NULL, NULL, NULL, NULL, NULL)),
  a_day("Left", '%m/%d/%Y'),
  MAP {'rehomed': 'adoption', 'went home': 'return-to-owner', 'moved to shelter': 'transfer',
    'back to colony': 'return-to-colony', 'dead': 'died'}[said("Why")] AS out_basis,
  named_or("To shelter", contact("To whom", "Phone", NULL, "Where", "Postcode", "Town")),
  looks("Cat", 'cat', "f/m", NULL),
  days_readable(["Arrived", "Left"], '%m/%d/%Y') AND both_or_none("Arrived", in_basis)
    AND both_or_none("Left", out_basis)
FROM ulverscar_stays;

CREATE TABLE movement AS
SELECT 'hathersand-movements' AS source, exported, said("Movement") AS key, "Chip" AS chip, said("Animal") AS animal_id,
  a_day("Date", '%d/%m/%Y') AS day,
  MAP {'came in as stray': 'intake-stray', 'given up by owner': 'intake-surrender', 'seized': 'intake-seizure',
    'stray hold over': 'stray-hold-ended', 'brought from abroad': 'import', 'came from another shelter': 'transfer-in',
    'went to another shelter': 'transfer-out', 'to foster carer': 'foster', 'to new home on trial': 'trial-started',
    'trial made final': 'trial-finalised', 'adopted': 'adoption', 'brought back by adopter': 'adoption-returned',
    'back to owner': 'return-to-owner', 'died': 'died'}[said("What happened")] AS move,
  named_or("Other shelter", contact_of("Given name", "Family name", "Phone", "E-mail", "Address",
    "Postcode", "Town")) AS other,
  looks("Called", "Kind of animal", "Sex", NULL) AS described,
  days_readable(["Date"], '%d/%m/%Y') AND both_or_none("Date", move) AS readable
FROM hathersand_movements;

CREATE TABLE sale AS
SELECT 'tollbarrow-sales' AS source, exported, said("Pup") AS key, "Chip no." AS chip, NULL AS client,
  a_day("Sold", '%d.%m.%Y') AS sold, a_day("Came back", '%d.%m.%Y') AS returned,
  contact("Buyer", "Buyer's phone", "Buyer's mail", "Street", "Postcode", "Town") AS buyer,
  looks("Name", 'dog', "Sex", a_day("Whelped", '%d.%m.%Y')) AS described,
  days_readable(["Whelped", "Sold", "Came back"], '%d.%m.%Y') AS readable
FROM tollbarrow_sales
UNION ALL
SELECT 'corvelsea-sales', exported, said(sales.sale), chip, said(customer),
  a_day(sold_on, '%Y-%m-%d'), a_day(returned_on, '%Y-%m-%d'),
  contact_of(first_name, last_name, phone, email, address, postcode, town),
  looks(name, animal, sex, a_day(born, '%Y-%m-%d')),
  days_readable([sold_on, born, returned_on], '%Y-%m-%d') AS readable
FROM corvelsea_sales AS sales;

CREATE TABLE registration_row AS
SELECT 'coast-register' AS source, exported, said(registration) AS key, chip_number AS chip, said(account) AS account,
  a_day(contact_since, '%Y-%m-%d') AS since, a_day(ended_on, '%Y-%m-%d') AS ended, said(end_reason) AS end_reason,
  contact_of(given_name, family_name, phone, email, address, postcode, town) AS keeper,
  contact(second_contact, second_phone, NULL, NULL, NULL, NULL) AS second,
  looks(animal_name, species, NULL, NULL) AS described,
  days_readable([contact_since, ended_on], '%Y-%m-%d') AS readable
FROM coast_register
UNION ALL
SELECT 'northern-register', exported, said("No"), "Transponder number", NULL,
  a_day("Registered", '%d/%m/%Y'), a_day("Cancelled", '%d/%m/%Y'), NULL,
  contact("Keeper", "Keeper phone", "Keeper e-mail", "Keeper street", "Keeper postcode", "Keeper town"),
  contact("Second keeper", "Second keeper phone", NULL, NULL, NULL, NULL),
  looks("Animal", "Species", NULL, NULL),
  days_readable(["Registered", "Cancelled"], '%d/%m/%Y') AS readable
FROM northern_register
UNION ALL
SELECT 'inland-account', exported, said("Ref"), "Chip", said("Account"),
  a_day("Owner updated", '%m/%d/%Y'), NULL, NULL,
  contact("Owner", "Owner phone", "Owner email", "Owner address", "Owner postcode", "Owner town"), nobody(),
  looks("Pet", "Type", NULL, NULL),
  days_readable(["Owner updated"], '%m/%d/%Y') AS readable
FROM inland_account
UNION ALL
SELECT 'brackensay-register', exported, said(entry), chip, NULL, a_day(since, '%Y-%m-%d'), NULL, NULL,
  contact(keeper, phone, NULL, street, postcode, town), nobody(), looks(animal, NULL, NULL, NULL),
  days_readable([since], '%Y-%m-%d') AS readable
FROM brackensay_register;

CREATE TABLE report_row AS
SELECT 'lost-and-found' AS source, exported, said("Report") AS key, "Chip" AS chip, said("Type") AS report,
  a_day("Date", '%d.%m.%Y') AS day, a_day("Gone home on", '%d.%m.%Y') AS reunited,
  contact("Reported by", "Phone", NULL, NULL, NULL, NULL) AS reporter,
  named_or("With", contact("Reported by", "Phone", NULL, NULL, NULL, NULL)) AS holder,
  looks("Animal", "Kind", NULL, NULL) AS described,
  days_readable(["Date", "Gone home on"], '%d.%m.%Y') AS readable
FROM lost_and_found;

-- Who bought which box of chips.
CREATE TABLE supply_row AS
SELECT 'skarnholme-supply' AS source, exported, said(box) AS key, a_day(delivered, '%Y-%m-%d') AS day,
  CASE WHEN said(purchaser) IS NULL THEN nobody() ELSE named(purchaser) END AS purchaser,
  struct_pack("first" := said("first"), "last" := said("last"), prepaid := coalesce(said(prepaid), 'no') = 'yes') AS box,
  days_readable([delivered], '%Y-%m-%d') AS readable
FROM skarnholme_supply;
