-- The core question, asked of the exports themselves: whose latest custodian is other than the registered contact, and
-- which two chips of one animal are registered to different people? Every column that the question needs is read. It is a
-- yardstick, no oracle: the newest day wins, and two contacts are one when a phone or an e-mail address agrees, or the name.

SET VARIABLE iso = '%Y-%m-%d';

CREATE MACRO rows_of(file, sign) AS TABLE
  SELECT * FROM read_csv(getvariable('folder') || '/' || file, delim = sign, header = true, all_varchar = true, quote = '"');

CREATE VIEW kept AS
  SELECT replace("Microchip", ' ', '') AS chip, try_strptime("Last seen", getvariable('iso')) AS day, "Client" AS name, "Phone" AS phone,
         "E-mail" AS email, "Address" AS street, "Postcode" AS postcode, "Town" AS town
    FROM rows_of('vendlemouth-patients-*.csv', ',')
  UNION ALL SELECT replace("CHIP", ' ', ''), try_strptime("SEEN", '%m/%d/%Y'), "OWNER", "TEL", "EMAIL", "STREET", "POSTCODE", "TOWN"
    FROM rows_of('corvelsea-patients-*.csv', E'\t')
  UNION ALL SELECT "Chip number", try_strptime("Last here", '%d/%m/%Y'), "Keeper", "Keeper's phone", NULL, "House and street", "Postcode", "Village"
    FROM rows_of('nethersay-patients-*.csv', ',')
  UNION ALL SELECT "Transponder", try_strptime("Last visit", '%d.%m.%Y'), "First name" || ' ' || "Surname", "Telephone", "Mail", "Street", "Code", "Place"
    FROM rows_of('pellerwick-patients-*.csv', ';')
  UNION ALL SELECT chip, try_strptime(sold_on, getvariable('iso')), first_name || ' ' || last_name, phone, email, address, postcode, town
    FROM rows_of('corvelsea-sales-*.csv', '|')
  UNION ALL SELECT "Chip no.", try_strptime("Sold", '%d.%m.%Y'), "Buyer", "Buyer's phone", "Buyer's mail", "Street", "Postcode", "Town"
    FROM rows_of('tollbarrow-sales-*.csv', ';')
  UNION ALL SELECT microchip, try_strptime(outcome_date, getvariable('iso')), outcome_to, outcome_phone, outcome_email, outcome_address, outcome_postcode, outcome_town
    FROM rows_of('garrowness-stays-*.csv', ',')
  UNION ALL SELECT "Chip", try_strptime("Left", '%m/%d/%Y'), "To whom", "Phone", NULL, "Where", "Postcode", "Town"
    FROM rows_of('ulverscar-stays-*.csv', E'\t')
  UNION ALL SELECT "Chip", try_strptime("Date", '%d/%m/%Y'), "Given name" || ' ' || "Family name", "Phone", "E-mail", "Address", "Postcode", "Town"
    FROM rows_of('hathersand-movements-*.csv', ';');

CREATE VIEW registered AS
  SELECT chip_number AS chip, try_strptime(contact_since, getvariable('iso')) AS day, given_name || ' ' || family_name AS name, phone,
         email, address AS street, postcode, town
    FROM rows_of('coast-register-*.csv', ',')
  UNION ALL SELECT "Transponder number", try_strptime("Registered", '%d/%m/%Y'), "Keeper", "Keeper phone", "Keeper e-mail", "Keeper street", "Keeper postcode", "Keeper town"
    FROM rows_of('northern-register-*.csv', ';')
  UNION ALL SELECT "Chip", try_strptime("Owner updated", '%m/%d/%Y'), "Owner", "Owner phone", "Owner email", "Owner address", "Owner postcode", "Owner town"
    FROM rows_of('inland-account-*.csv', E'\t')
  UNION ALL SELECT chip, try_strptime(since, getvariable('iso')), keeper, phone, NULL, street, postcode, town
    FROM rows_of('brackensay-register-*.csv', ',');

CREATE VIEW paired AS
  SELECT replace("Microchip", ' ', '') AS chip, replace("Second microchip", ' ', '') AS other FROM rows_of('vendlemouth-patients-*.csv', ',')
   WHERE "Second microchip" <> ''
  UNION ALL SELECT replace("CHIP", ' ', ''), replace("CHIP 2", ' ', '') FROM rows_of('corvelsea-patients-*.csv', E'\t') WHERE "CHIP 2" <> ''
  UNION ALL SELECT "Transponder", "Other transponder" FROM rows_of('pellerwick-patients-*.csv', ';') WHERE "Other transponder" <> '';

-- The last ten digits: national and international spellings of one number are one.
CREATE MACRO digits(phone) AS nullif(right(regexp_replace(phone, '[^0-9]', '', 'g'), 10), '');

CREATE MACRO differ(one, other) AS NOT (
  coalesce(digits(one.phone) = digits(other.phone), false)
  OR coalesce(lower(one.email) = lower(other.email), false)
  OR coalesce(lower(one.name) = lower(other.name), false));

-- Two ways to take the newest: as an aggregate, and as a window.
CREATE MACRO newest_by_arg_max(told) AS TABLE
  SELECT chip, arg_max({name: name, phone: phone, email: email, street: street, postcode: postcode, town: town}, day) AS who
    FROM query_table(told) WHERE day IS NOT NULL GROUP BY chip;

CREATE MACRO newest_by_window(told) AS TABLE
  SELECT chip, {name: name, phone: phone, email: email, street: street, postcode: postcode, town: town} AS who
    FROM query_table(told) WHERE day IS NOT NULL
    QUALIFY row_number() OVER (PARTITION BY chip ORDER BY day DESC) = 1;
