-- The coast as the oracle knows it, written by hand from fixtures/README.md and the demo's organisations: who is who,
-- who sends what, and how each source writes its files. All invented.

CREATE TABLE organisation (
  id VARCHAR, name VARCHAR, phone VARCHAR, email VARCHAR, stays_primary BOOLEAN);
INSERT INTO organisation VALUES
  ('vendle-network', 'Vendle Coast Rescue Network', '+1 415 555 0100', 'found@vendle-network.example.org', false),
  ('vendlemouth-clinic', 'Vendlemouth Veterinary Clinic', '+1 415 555 0110', 'desk@vendlemouth-clinic.example.org', false),
  ('pellerwick-clinic', 'Pellerwick Harbour Clinic', '+1 415 555 0111', 'desk@pellerwick-clinic.example.org', false),
  ('corvelsea-clinic', 'Corvelsea Animal Clinic', '+1 415 555 0112', 'desk@corvelsea-clinic.example.org', false),
  ('nethersay-clinic', 'Nethersay Island Clinic', '+1 415 555 0113', 'desk@nethersay-clinic.example.org', false),
  ('garrowness-shelter', 'Garrowness Shelter', '+1 415 555 0120', 'office@garrowness-shelter.example.org', false),
  ('hathersand-shelter', 'Hathersand Animal Shelter', '+1 415 555 0121', 'office@hathersand-shelter.example.org', false),
  ('ulverscar-shelter', 'Ulverscar Cat Shelter', '+1 415 555 0122', 'office@ulverscar-shelter.example.org', true),
  ('tollbarrow-kennels', 'Tollbarrow Farm Kennels', '+1 415 555 0140', 'kennels@tollbarrow.example.org', false),
  ('corvelsea-pet-shop', 'Corvelsea Pet Shop', '+1 415 555 0141', 'counter@corvelsea-pet-shop.example.org', false),
  ('coast-register', 'Vendle Coast Chip Register', '+1 415 555 0150', 'records@coast-register.example.org', false),
  ('northern-register', 'Garrowness Northern Register', '+1 415 555 0151', 'records@northern-register.example.org', false),
  ('inland-register', 'Tollbarrow Inland Register', '+1 415 555 0152', 'records@inland-register.example.org', false),
  ('brackensay-register', 'Brackensay Island Register', '+1 415 555 0153', 'records@brackensay-register.example.org', false),
  ('skarnholme-register', 'Skarnholme Register', '+1 415 555 0154', 'records@skarnholme-register.example.org', false),
  ('skarnholme-supply', 'Skarnholme Chip Supply', '+1 415 555 0160', 'orders@skarnholme-supply.example.org', false);

CREATE TABLE clinic AS SELECT id FROM organisation WHERE id LIKE '%-clinic';

CREATE TABLE organisation_name (organisation VARCHAR, name VARCHAR);
INSERT INTO organisation_name SELECT id, name FROM organisation;
INSERT INTO organisation_name VALUES
  ('vendle-network', 'Vendle Network'),
  ('vendlemouth-clinic', 'Vendlemouth Vets'),
  ('vendlemouth-clinic', 'Vendlemouth Clinic'),
  ('pellerwick-clinic', 'Pellerwick Vets'),
  ('nethersay-clinic', 'The Island Clinic'),
  ('garrowness-shelter', 'Garrowness Animal Shelter'),
  ('garrowness-shelter', 'Shelter Garrowness'),
  ('hathersand-shelter', 'Hathersand Shelter'),
  ('ulverscar-shelter', 'Cat Shelter Ulverscar'),
  ('corvelsea-pet-shop', 'Pet Shop Corvelsea');

CREATE TABLE carer (
  organisation VARCHAR, name VARCHAR, phone VARCHAR, email VARCHAR, street VARCHAR, postcode VARCHAR, town VARCHAR);
INSERT INTO carer VALUES
  ('garrowness-shelter', 'Mirela Østby', '+1 415 555 0131', 'mirela.ostby@example.org', '31 Thrift Lane', 'GN 245',
    'Garrowness'),
  ('hathersand-shelter', 'Desta Llewellyn', '+1 415 555 0132', 'desta.llewellyn@example.org', '6 Cockle Lane', 'HS 318',
    'Hathersand'),
  ('hathersand-shelter', 'Haruto van der Meer', '+1 415 555 0133', NULL, '44 Drift Road', 'SK 207', 'Skarnholme'),
  ('ulverscar-shelter', 'Thandiwe Saarinen', '+1 415 555 0134', NULL, '17 Wrack Lane', 'UV 530', 'Ulverscar');

-- Which numbers a registry may hold by the directory; first and last are numbers of one length.
CREATE TABLE registry_range (registry VARCHAR, first VARCHAR, last VARCHAR);
INSERT INTO registry_range VALUES
  ('coast-register', '999010000000000', '999010999999999'),
  ('coast-register', '999015000000000', '999015999999999'),
  ('coast-register', '100000000', '199999999'),
  ('coast-register', '7F00000000', '7FZZZZZZZZ'),
  ('northern-register', '999020000000000', '999020999999999'),
  ('northern-register', '999015000000000', '999015999999999'),
  ('inland-register', '999030000000000', '999030999999999'),
  ('brackensay-register', '999040000000000', '999040999999999'),
  ('skarnholme-register', '999050000000000', '999050999999999');

-- Who sends what. kind: what a row is; sends: full (everything), changes, or window (what is dated since the last
-- export); whole: whether these are all records of the organisation, or one account's slice; filled: the fields that it
-- declares to fill in.
CREATE TABLE source (
  id VARCHAR, owner VARCHAR, kind VARCHAR, sends VARCHAR, whole BOOLEAN, delimiter VARCHAR, days VARCHAR,
  filled VARCHAR[]);
INSERT INTO source VALUES
  ('vendlemouth-patients', 'vendlemouth-clinic', 'patient', 'full', true, ',', '%Y-%m-%d', ['scans']),
  ('pellerwick-patients', 'pellerwick-clinic', 'patient', 'full', true, ';', '%d.%m.%Y', ['scans']),
  ('corvelsea-patients', 'corvelsea-clinic', 'patient', 'full', true, chr(9), '%m/%d/%Y', []),
  ('nethersay-patients', 'nethersay-clinic', 'patient', 'full', true, ',', '%d/%m/%Y', []),
  ('garrowness-stays', 'garrowness-shelter', 'stay', 'full', true, ',', '%Y-%m-%d', []),
  ('hathersand-movements', 'hathersand-shelter', 'movement', 'changes', true, ';', '%d/%m/%Y', []),
  ('ulverscar-stays', 'ulverscar-shelter', 'stay', 'full', true, chr(9), '%m/%d/%Y', []),
  ('tollbarrow-sales', 'tollbarrow-kennels', 'sale', 'full', true, ';', '%d.%m.%Y', []),
  ('corvelsea-sales', 'corvelsea-pet-shop', 'sale', 'full', true, '|', '%Y-%m-%d', []),
  ('coast-register', 'coast-register', 'registration', 'full', true, ',', '%Y-%m-%d', ['phones', 'emails']),
  ('northern-register', 'northern-register', 'registration', 'full', true, ';', '%d/%m/%Y', ['phones']),
  ('inland-account', 'inland-register', 'registration', 'full', false, chr(9), '%m/%d/%Y', []),
  ('brackensay-register', 'brackensay-register', 'registration', 'full', true, ',', '%Y-%m-%d', []),
  ('skarnholme-supply', 'skarnholme-supply', 'supply', 'full', true, ',', '%Y-%m-%d', []),
  ('lost-and-found', 'vendle-network', 'report', 'window', true, ',', '%d.%m.%Y', []);

CREATE TABLE registry AS SELECT DISTINCT registry AS id FROM registry_range;

-- Each file that was sent, whether it has rows or not.
CREATE TABLE export (source VARCHAR, exported DATE);

-- The exports as they are, column by column, with the date that the file's name gives.
CREATE TABLE vendlemouth_patients (
  "Patient No" VARCHAR, "Client No" VARCHAR, "Patient" VARCHAR, "Kind" VARCHAR, "Sex" VARCHAR, "Born" VARCHAR,
  "Microchip" VARCHAR, "Second microchip" VARCHAR, "Implanted" VARCHAR, "Client" VARCHAR, "Phone" VARCHAR,
  "E-mail" VARCHAR, "Address" VARCHAR, "Postcode" VARCHAR, "Town" VARCHAR, "Last seen" VARCHAR, "Scanned" VARCHAR,
  "Scan result" VARCHAR, "Died" VARCHAR, exported DATE);
CREATE TABLE pellerwick_patients (
  "Record" VARCHAR, "Owner ref" VARCHAR, "Surname" VARCHAR, "First name" VARCHAR, "Telephone" VARCHAR, "Mail" VARCHAR,
  "Street" VARCHAR, "Code" VARCHAR, "Place" VARCHAR, "Pet name" VARCHAR, "Species" VARCHAR, "Sex" VARCHAR,
  "Date of birth" VARCHAR, "Transponder" VARCHAR, "Other transponder" VARCHAR, "Date of implant" VARCHAR,
  "Last visit" VARCHAR, "Last scan" VARCHAR, "Scan" VARCHAR, "Deceased on" VARCHAR, exported DATE);
CREATE TABLE corvelsea_patients (
  "ID" VARCHAR, "CHIP" VARCHAR, "CHIP 2" VARCHAR, "ANIMAL" VARCHAR, "SPECIES" VARCHAR, "SEX" VARCHAR, "DOB" VARCHAR,
  "CHIPPED" VARCHAR, "SEEN" VARCHAR, "DECEASED" VARCHAR, "OWNER ID" VARCHAR, "OWNER" VARCHAR, "TEL" VARCHAR,
  "EMAIL" VARCHAR, "STREET" VARCHAR, "POSTCODE" VARCHAR, "TOWN" VARCHAR, exported DATE);
CREATE TABLE nethersay_patients (
  "Card" VARCHAR, "Animal" VARCHAR, "Species" VARCHAR, "Chip number" VARCHAR, "Chip put in" VARCHAR,
  "Last here" VARCHAR, "Dead since" VARCHAR, "Keeper" VARCHAR, "Keeper's phone" VARCHAR, "House and street" VARCHAR,
  "Postcode" VARCHAR, "Village" VARCHAR, exported DATE);
CREATE TABLE garrowness_stays (
  stay VARCHAR, animal_id VARCHAR, microchip VARCHAR, name VARCHAR, species VARCHAR, sex VARCHAR, born VARCHAR,
  intake_date VARCHAR, intake_type VARCHAR, intake_from_org VARCHAR, intake_from VARCHAR, intake_phone VARCHAR,
  outcome_date VARCHAR, outcome_type VARCHAR, outcome_to_org VARCHAR, outcome_to VARCHAR, outcome_phone VARCHAR,
  outcome_email VARCHAR, outcome_address VARCHAR, outcome_postcode VARCHAR, outcome_town VARCHAR, exported DATE);
CREATE TABLE hathersand_movements (
  "Movement" VARCHAR, "Animal" VARCHAR, "Chip" VARCHAR, "Called" VARCHAR, "Kind of animal" VARCHAR, "Sex" VARCHAR,
  "Date" VARCHAR, "What happened" VARCHAR, "Other shelter" VARCHAR, "Family name" VARCHAR, "Given name" VARCHAR,
  "Phone" VARCHAR, "E-mail" VARCHAR, "Address" VARCHAR, "Postcode" VARCHAR, "Town" VARCHAR, exported DATE);
CREATE TABLE ulverscar_stays (
  "Nr" VARCHAR, "Cat" VARCHAR, "Chip" VARCHAR, "f/m" VARCHAR, "Arrived" VARCHAR, "How" VARCHAR,
  "From shelter" VARCHAR, "From whom" VARCHAR, "Left" VARCHAR, "Why" VARCHAR, "To shelter" VARCHAR, "To whom" VARCHAR,
  "Phone" VARCHAR, "Where" VARCHAR, "Postcode" VARCHAR, "Town" VARCHAR, exported DATE);
CREATE TABLE tollbarrow_sales (
  "Pup" VARCHAR, "Chip no." VARCHAR, "Name" VARCHAR, "Sex" VARCHAR, "Whelped" VARCHAR, "Sold" VARCHAR,
  "Buyer" VARCHAR, "Buyer's phone" VARCHAR, "Buyer's mail" VARCHAR, "Street" VARCHAR, "Postcode" VARCHAR,
  "Town" VARCHAR, "Came back" VARCHAR, exported DATE);
CREATE TABLE corvelsea_sales (
  sale VARCHAR, sold_on VARCHAR, animal VARCHAR, name VARCHAR, sex VARCHAR, born VARCHAR, chip VARCHAR,
  customer VARCHAR, first_name VARCHAR, last_name VARCHAR, phone VARCHAR, email VARCHAR, address VARCHAR,
  postcode VARCHAR, town VARCHAR, returned_on VARCHAR, exported DATE);
CREATE TABLE coast_register (
  registration VARCHAR, chip_number VARCHAR, account VARCHAR, animal_name VARCHAR, species VARCHAR,
  contact_since VARCHAR, given_name VARCHAR, family_name VARCHAR, phone VARCHAR, email VARCHAR, address VARCHAR,
  postcode VARCHAR, town VARCHAR, second_contact VARCHAR, second_phone VARCHAR, ended_on VARCHAR, end_reason VARCHAR,
  exported DATE);
CREATE TABLE northern_register (
  "No" VARCHAR, "Transponder number" VARCHAR, "Animal" VARCHAR, "Species" VARCHAR, "Registered" VARCHAR,
  "Keeper" VARCHAR, "Keeper phone" VARCHAR, "Keeper e-mail" VARCHAR, "Keeper street" VARCHAR,
  "Keeper postcode" VARCHAR, "Keeper town" VARCHAR, "Second keeper" VARCHAR, "Second keeper phone" VARCHAR,
  "Cancelled" VARCHAR, exported DATE);
CREATE TABLE inland_account (
  "Ref" VARCHAR, "Chip" VARCHAR, "Account" VARCHAR, "Pet" VARCHAR, "Type" VARCHAR, "Owner updated" VARCHAR,
  "Owner" VARCHAR, "Owner phone" VARCHAR, "Owner email" VARCHAR, "Owner address" VARCHAR, "Owner postcode" VARCHAR,
  "Owner town" VARCHAR, exported DATE);
CREATE TABLE brackensay_register (
  entry VARCHAR, chip VARCHAR, animal VARCHAR, since VARCHAR, keeper VARCHAR, phone VARCHAR, street VARCHAR,
  postcode VARCHAR, town VARCHAR, exported DATE);
CREATE TABLE skarnholme_supply (
  box VARCHAR, "first" VARCHAR, "last" VARCHAR, delivered VARCHAR, purchaser VARCHAR, prepaid VARCHAR, exported DATE);
CREATE TABLE lost_and_found (
  "Report" VARCHAR, "Type" VARCHAR, "Date" VARCHAR, "Chip" VARCHAR, "Animal" VARCHAR, "Kind" VARCHAR, "With" VARCHAR,
  "Reported by" VARCHAR, "Phone" VARCHAR, "Gone home on" VARCHAR, exported DATE);
