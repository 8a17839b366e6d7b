package withers.ingest.translate;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.contact.Contact;
import withers.contact.Referenced;

/** What rows of each kind of source state. All people, numbers and places are invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RowTranslatorTest {

  @TempDir Path folder;

  private Reading reading(String profile) {
    return new Reading(folder, profile);
  }

  private Reading clinic() {
    return reading(
        """
        kind: clinic-patients
        format: {date: dd/MM/yyyy}
        key: No
        animal-id: No
        columns:
          chip: Chip
          second-chip: Chip 2
          name: Name
          species: Kind
          sex: Sex
          born: Born
          implanted: Put in
          visit: Seen
          scanned: Scanned
          scan-result: Scan
          died: Died
          deceased: Dead
          client:
            {id: Client, given-name: First, family-name: Last, phones: [Tel, Mobile], emails: Mail, address: Street, postcode: Code, town: Town}
        values:
          species: {Canine: dog}
          sex: {F: female}
        """);
  }

  private static final String CLINIC =
      "No,Chip,Chip 2,Name,Kind,Sex,Born,Put in,Seen,Scanned,Scan,Died,Dead,Client,First,Last,Tel,Mobile,Mail,Street,Code,Town";

  @Test
  void a_patient_with_everything() {
    assertThat(
            clinic()
                .of(
                    CLINIC,
                    "7,999 010 000 000 017,,Pip,CANINE,F,01/05/2029,02/06/2029,03/02/2031,04/02/2031,Not detected,05/02/2031,,C9,Ada,Example,(212) 555-0100,,ada@example.org,1 Quay Street,00001,Harbourtown"))
        .containsExactly(
            "7: ANIMAL of 999010000000017: DOG Pip female born 2029-05-01;"
                + " LINK of 999010000000017: Linked[animalId=7];"
                + " DEATH of 999010000000017 on 2031-02-05: Died[];"
                + " IMPLANT of 999010000000017 on 2029-06-02: by us;"
                + " VISIT of 999010000000017 on 2031-02-03: with <Ada Example> (C9);"
                + " SCAN of 999010000000017 on 2031-02-04: Scanned[result=NOT_DETECTED]");
  }

  @Test
  void a_patient_never_seen_states_no_client_and_noughts_are_no_day() {
    assertThat(clinic().of(CLINIC, "7,999010000000017,,Pip,,,00/00/0000,,,,,,no,C9,Ada,,,,,,,"))
        .containsExactly(
            "7: ANIMAL of 999010000000017: UNSTATED Pip; LINK of 999010000000017: Linked[animalId=7]");
  }

  @Test
  void two_chips_are_paired_both_ways_and_a_repeated_one_is_not() {
    assertThat(
            clinic()
                .of(
                    CLINIC,
                    "7,999010000000017,999010000000025,,Cat,,,,,,,,,,,,,,,,,",
                    "8,999010000000017,999010000000017,,Cat,,,,,,,,,,,,,,,,,",
                    "9,none,999010000000025,,Cat,,,,,,,,,,,,,,,,,"))
        .containsExactly(
            "7: ANIMAL of 999010000000017: CAT; LINK of 999010000000017: Linked[animalId=7];"
                + " PAIRING of 999010000000017: PairedWith[other=999010000000025];"
                + " PAIRING of 999010000000025: PairedWith[other=999010000000017]",
            "8: ANIMAL of 999010000000017: CAT; LINK of 999010000000017: Linked[animalId=8]",
            "9: ANIMAL of 999010000000025: CAT; LINK of 999010000000025: Linked[animalId=9]");
  }

  @Test
  void a_damaged_second_number_is_told_of_and_of_what_else_the_animal_carries() {
    assertThat(
            clinic()
                .of(
                    CLINIC,
                    "7,999010000000017,9990100000O0025,Pip,Cat,,,,03/02/2031,,,,,,Ada,,,,,,,",
                    "8,999010000000017,9.9901E+14,,,,,,,,,,,,,,,,,,,",
                    "9,9990100000O0017,999010000000025,,,,,,,,,,,,,,,,,,,"))
        .containsExactly(
            "7: ANIMAL of 999010000000017: CAT Pip; LINK of 999010000000017: Linked[animalId=7];"
                + " ANIMAL of '9990100000O0025' [999010000000025]: CAT Pip;"
                + " PAIRING of '9990100000O0025' [999010000000025]: PairedWith[other=999010000000017];"
                + " VISIT of 999010000000017 on 2031-02-03: with <Ada>",
            "8: ANIMAL of 999010000000017: UNSTATED; LINK of 999010000000017: Linked[animalId=8];"
                + " ANIMAL of '9.9901E+14' []: UNSTATED;"
                + " PAIRING of '9.9901E+14' []: PairedWith[other=999010000000017]",
            "9: ANIMAL of '9990100000O0017' [999010000000017]: UNSTATED;"
                + " LINK of '9990100000O0017' [999010000000017]: Linked[animalId=9];"
                + " PAIRING of '9990100000O0017' [999010000000017]: PairedWith[other=999010000000025]");
  }

  @Test
  void of_two_damaged_numbers_neither_is_lost_and_one_that_stands_twice_is_told_of_once() {
    assertThat(
            clinic()
                .of(
                    CLINIC,
                    "7,9990100000O0017,9.9901E+14,,,,,,,,,,,,,,,,,,,",
                    "8,9.9901E+14,9.9901E+14,,,,,,,,,,,,,,,,,,,",
                    "9,none,9.9901E+14,,,,,,,,,,,,,,,,,,,"))
        .containsExactly(
            "7: ANIMAL of '9990100000O0017' [999010000000017]: UNSTATED;"
                + " LINK of '9990100000O0017' [999010000000017]: Linked[animalId=7];"
                + " ANIMAL of '9.9901E+14' []: UNSTATED",
            "8: ANIMAL of '9.9901E+14' []: UNSTATED; LINK of '9.9901E+14' []: Linked[animalId=8]",
            "9: ANIMAL of '9.9901E+14' []: UNSTATED; LINK of '9.9901E+14' []: Linked[animalId=9]");
  }

  @Test
  void damaged_numbers_keep_their_text_and_rows_without_a_number_their_animal_id() {
    assertThat(
            clinic()
                .of(
                    CLINIC,
                    "7,9990100000O0017,,,,,,,,,,,,,,,,,,,,",
                    "8,9.9901E+14,,,,,,,,,,,,,,,,,,,,",
                    "9,unknown,,,Parrot,,,,03/02/2031,,,,yes,,Ada,,,,,,,"))
        .containsExactly(
            "7: ANIMAL of '9990100000O0017' [999010000000017]: UNSTATED;"
                + " LINK of '9990100000O0017' [999010000000017]: Linked[animalId=7]",
            "8: ANIMAL of '9.9901E+14' []: UNSTATED; LINK of '9.9901E+14' []: Linked[animalId=8]",
            "9: ANIMAL of animal 9: OTHER; VISIT of animal 9 on 2031-02-03: with <Ada>; DEATH of animal 9: Died[]");
  }

  @Test
  void ten_digits_in_a_chip_column_are_a_number() {
    assertThat(clinic().of(CLINIC, "7,9810203044,,,,,,,,,,,,,,,,,,,,"))
        .containsExactly(
            "7: ANIMAL of 9810203044: UNSTATED; LINK of 9810203044: Linked[animalId=7]");
  }

  @Test
  void rows_that_can_t_be_taken_say_why() {
    assertThat(
            clinic()
                .of(
                    CLINIC,
                    ",999010000000017,,,,,,,,,,,,,,,,,,,,",
                    "K".repeat(201) + ",999010000000017,,,,,,,,,,,,,,,,,,,,",
                    "7,Ada Example,,,,,,,,,,,,,,,,,,,,",
                    "8,999010000000017,,,,,,,31/02/2031,,,,,,,,,,,,,",
                    "9,999010000000017,,,,,,,,,,,perhaps,,,,,,,,,",
                    "10,999010000000017,,Pip, the small,,,,,,,,,,,,,,,,,,",
                    "short"))
        .containsExactly(
            "NO_KEY in \"No\": Expected a key that names the record, but found none",
            "KEY_TOO_LONG in \"No\": Expected a key of at most 200 characters, but found 201",
            "7: NUMBER_REFUSED in \"Chip\": Expected a chip number of 15 digits, 9 digits or 10 characters, but found a"
                + " text of 11 characters, 0 of them digits; write the number alone, as the scanner shows it",
            "8: DAY_REFUSED in \"Seen\": Expected a day written as dd/MM/yyyy, such as 31/01/2026, but found other text",
            "9: WORD_UNKNOWN in \"Dead\": Expected a word that values: deceased turns into one of ours, but found another",
            "10: WRONG_NUMBER_OF_CELLS in \"\": Expected 22 cells, but found 23",
            "short: WRONG_NUMBER_OF_CELLS in \"\": Expected 22 cells, but found 1");
  }

  @Test
  void without_an_animal_id_a_row_without_a_number_is_rejected() {
    Reading registry =
        reading(
            """
            kind: registry-contacts
            key: Nr
            columns: {chip: Chip, primary: {name: Who}}
            """);

    assertThat(registry.of("Nr,Chip,Who", "1,-,Ada"))
        .containsExactly(
            "1: NO_NUMBER in \"Chip\": Expected a chip number, or an animal's id where the profile names one, but found"
                + " neither");
  }

  @Test
  void people_are_kept_whole_and_phones_apart() {
    Translation.Stated row =
        (Translation.Stated)
            clinic()
                .translations(
                    CLINIC,
                    "7,999010000000017,,,,,,,03/02/2031,,,,,C9, Ada , Example ,(212) 555-0100,+1 212 555 0101,ada@example.org,1 Quay Street,00001,Harbourtown")
                .get(0);

    assertThat(row.contacts().stream().map(Referenced::contact))
        .containsExactly(
            new Contact(
                "",
                "Ada",
                "Example",
                java.util.List.of("(212) 555-0100", "+1 212 555 0101"),
                java.util.List.of("ada@example.org"),
                java.util.List.of("1 Quay Street"),
                "00001",
                "Harbourtown",
                "",
                ""));
    assertThat(row.statements().toString()).doesNotContain("Ada", "555", "Quay");
  }

  @Test
  void the_date_of_the_export_is_no_part_of_what_is_said() {
    Translation.Stated row =
        (Translation.Stated)
            clinic().translations(CLINIC, "7,999010000000017,,,,,,,,,read,,Y,,,,,,,,,").get(0);

    assertThat(row.statements()).allSatisfy(event -> assertThat(event.date()).isEmpty());
  }

  @Test
  void a_shelter_s_stay_says_how_the_animal_came_and_how_it_left() {
    Reading stays =
        reading(
            """
            kind: shelter-movements
            key: Stay
            animal-id: Animal
            columns:
              chip: Chip
              intake: In
              intake-type: How
              intake-from: {name: From, organisation: From shelter}
              outcome: Out
              outcome-type: Why
              outcome-to: {name: To, organisation: To shelter}
            values:
              intake-type: {found: intake-stray, given up: intake-surrender, from shelter: transfer-in, back: adoption-returned}
              outcome-type: {rehomed: adoption, moved: transfer-out, dead: died, foster ended: ignored}
            fixed: {species: cat}
            """);

    assertThat(
            stays.of(
                "Stay,Animal,Chip,In,How,From,From shelter,Out,Why,To,To shelter",
                "1,A1,999010000000017,2031-01-02,Found,Ada,,2031-01-09,REHOMED,Bela,",
                "2,A2,,2031-01-03,given-up,Cleo,,,,,",
                "3,A3,999010000000025,2031-01-04,from shelter,,Dune Shelter,2031-01-10,moved,,Far Shelter",
                "4,A4,999010000000033,2031-01-05,back,Dag,,2031-01-11,dead,,",
                "5,A5,999010000000041,,,,,2031-01-12,foster ended,Eve,",
                "6,A6,999010000000058,2031-01-06,,Ada,,,,,",
                "7,A7,999010000000066,,found,Ada,,,,,"))
        .containsExactly(
            "1: ANIMAL of 999010000000017: CAT; LINK of 999010000000017: Linked[animalId=A1];"
                + " INTAKE of 999010000000017 on 2031-01-02: INTAKE_STRAY <Ada> -> us;"
                + " OUTCOME of 999010000000017 on 2031-01-09: ADOPTION us -> <Bela>",
            "2: ANIMAL of animal A2: CAT; INTAKE of animal A2 on 2031-01-03: INTAKE_SURRENDER <Cleo> -> us",
            "3: ANIMAL of 999010000000025: CAT; LINK of 999010000000025: Linked[animalId=A3];"
                + " INTAKE of 999010000000025 on 2031-01-04: TRANSFER Dune Shelter -> us;"
                + " OUTCOME of 999010000000025 on 2031-01-10: TRANSFER us -> Far Shelter",
            "4: ANIMAL of 999010000000033: CAT; LINK of 999010000000033: Linked[animalId=A4];"
                + " INTAKE of 999010000000033 on 2031-01-05: ADOPTION_RETURNED <Dag> -> us;"
                + " DEATH of 999010000000033 on 2031-01-11: Died[]",
            "5: ANIMAL of 999010000000041: CAT; LINK of 999010000000041: Linked[animalId=A5]",
            "6: WORD_MISSING in \"How\": Expected what happened on the day, but found nothing",
            "7: DAY_MISSING in \"In\": Expected the day on which it happened, but found none");
  }

  @Test
  void a_shelter_s_movement_is_one_change_of_hands() {
    Reading movements =
        reading(
            """
            kind: shelter-movements
            key: [Animal, Nr]
            columns: {chip: Chip, moved: Day, movement-type: What, movement-with: {name: Who}}
            """);

    assertThat(
            movements.of(
                "Animal,Nr,Chip,Day,What,Who",
                "A|1,1,999010000000017,2031-01-02,Stray hold ended,",
                "A,1|1,999010000000017,2031-01-03,trial_started,Ada",
                "A,2,999010000000017,2031-01-04,Return to owner,"))
        .containsExactly(
            "A\\|1|1: ANIMAL of 999010000000017: UNSTATED;"
                + " MOVEMENT of 999010000000017 on 2031-01-02: STRAY_HOLD_ENDED nobody -> us",
            "A|1\\|1: ANIMAL of 999010000000017: UNSTATED;"
                + " MOVEMENT of 999010000000017 on 2031-01-03: TRIAL_STARTED us -> <Ada>",
            "A|2: ANIMAL of 999010000000017: UNSTATED;"
                + " MOVEMENT of 999010000000017 on 2031-01-04: RETURN_TO_OWNER us -> nobody");
  }

  @Test
  void a_seller_s_animal_is_sold_and_may_come_back() {
    Reading sales =
        reading(
            """
            kind: seller-sales
            key: Nr
            columns: {chip: Chip, sold: Sold, returned: Back, buyer: {id: Customer, name: Buyer}}
            """);

    assertThat(
            sales.of(
                "Nr,Chip,Sold,Back,Customer,Buyer",
                "1,999010000000017,2031-01-02,2031-01-20,K1,Ada",
                "2,999010000000025,,,,"))
        .containsExactly(
            "1: ANIMAL of 999010000000017: UNSTATED; SALE of 999010000000017 on 2031-01-02: SALE us -> <Ada> (K1);"
                + " SALE_RETURN of 999010000000017 on 2031-01-20: SALE_RETURNED <Ada> (K1) -> us",
            "2: ANIMAL of 999010000000025: UNSTATED");
  }

  @Test
  void chips_are_supplied_in_ranges_or_one_by_one_and_never_by_guess() {
    Reading supply =
        reading(
            """
            kind: chip-supply
            key: Box
            columns: {first: First, last: Last, supplied: Day, prepaid: Paid, purchaser: {organisation: To}}
            """);

    assertThat(
            supply.of(
                "Box,First,Last,Day,Paid,To",
                "1,999010000000000,999010000000099,2031-01-02,Yes,Harbour Clinic",
                "2,999010000000100,,,no,Harbour Clinic",
                "3,999010000000099,999010000000000,,,Harbour Clinic",
                "4,9990100000O0000,999010000000099,,,Harbour Clinic",
                "5,,,,,Harbour Clinic"))
        .containsExactly(
            "1: SUPPLY of range on 2031-01-02: 999010000000000 to 999010000000099 for Harbour Clinic, prepaid",
            "2: SUPPLY of range: 999010000000100 to 999010000000100 for Harbour Clinic",
            "3: RANGE_REFUSED in \"First\": Expected a range whose last number follows its first, but found another",
            "4: RANGE_REFUSED in \"First\": Expected a number that can be read without guessing, but found a damaged one",
            "5: RANGE_REFUSED in \"First\": Expected a number, or the first and last of a range, but found none");
  }

  @Test
  void a_registration_names_its_contacts_by_role_and_may_have_ended() {
    Reading registry =
        reading(
            """
            kind: registry-contacts
            key: Nr
            columns:
              chip: Chip
              account: Account
              registered: Since
              updated: Changed
              status: State
              ended: Ended
              primary: {name: Owner}
              secondary: {name: Second}
              emergency: {name: Vet}
              organisation: {organisation: Rescue}
            values:
              status: {OK: active, moved: transferred-out, dead: died}
            """);

    assertThat(
            registry.of(
                "Nr,Chip,Account,Since,Changed,State,Ended,Owner,Second,Vet,Rescue",
                "1,999010000000017,N1,2030-01-02,2031-01-02,ok,,Ada,Bela,Cleo,Dune Shelter",
                "2,999010000000025,,2030-01-03,,,2031-01-05,Ada,,,",
                "3,999010000000033,,,,Moved,,Ada,,,",
                "4,999010000000041,,,,dead,2031-01-06,,,,"))
        .containsExactly(
            "1: ANIMAL of 999010000000017: UNSTATED; REGISTRATION of 999010000000017 on 2031-01-02: N1, PRIMARY <Ada>,"
                + " SECONDARY <Bela>, EMERGENCY <Cleo>, ORGANISATION Dune Shelter",
            "2: ANIMAL of 999010000000025: UNSTATED; REGISTRATION of 999010000000025 on 2030-01-03: no account, PRIMARY"
                + " <Ada>; REGISTRATION_END of 999010000000025 on 2031-01-05: RegistrationEnded[reason=UNSTATED]",
            "3: ANIMAL of 999010000000033: UNSTATED; REGISTRATION of 999010000000033: no account, PRIMARY <Ada>;"
                + " REGISTRATION_END of 999010000000033: RegistrationEnded[reason=TRANSFERRED_OUT]",
            "4: ANIMAL of 999010000000041: UNSTATED; REGISTRATION of 999010000000041: no account;"
                + " REGISTRATION_END of 999010000000041 on 2031-01-06: RegistrationEnded[reason=DIED];"
                + " DEATH of 999010000000041 on 2031-01-06: Died[]");
  }

  @Test
  void a_fixed_reason_speaks_only_of_registrations_that_have_ended() {
    Reading registry =
        reading(
            """
            kind: registry-contacts
            key: Nr
            columns: {chip: Chip, ended: Cancelled, primary: {name: Owner}}
            fixed: {end-reason: cancelled}
            """);

    assertThat(
            registry.of(
                "Nr,Chip,Cancelled,Owner",
                "1,999010000000017,,Ada",
                "2,999010000000025,2031-01-05,Ada"))
        .containsExactly(
            "1: ANIMAL of 999010000000017: UNSTATED; REGISTRATION of 999010000000017: no account, PRIMARY <Ada>",
            "2: ANIMAL of 999010000000025: UNSTATED; REGISTRATION of 999010000000025: no account, PRIMARY <Ada>;"
                + " REGISTRATION_END of 999010000000025 on 2031-01-05: RegistrationEnded[reason=CANCELLED]");
  }

  @Test
  void reports_of_lost_and_found_animals() {
    Reading reports =
        reading(
            """
            kind: lost-and-found
            key: Nr
            animal-id: Nr
            columns:
              chip: Chip
              report-type: Type
              reported: Day
              reunited: Home
              reporter: {name: Who}
              holder: {organisation: With}
            """);

    assertThat(
            reports.of(
                "Nr,Chip,Type,Day,Home,Who,With",
                "1,999010000000017,Lost,2031-01-02,2031-01-04,Ada,",
                "2,999010000000025,found,2031-01-03,,Bela,Dune Shelter",
                "3,,found,2031-01-04,,Cleo,",
                "4,999010000000033,Reunited,2031-01-05,,,",
                "5,999010000000041,,2031-01-06,,,",
                "6,999010000000058,lost,,,,"))
        .containsExactly(
            "1: ANIMAL of 999010000000017: UNSTATED; LINK of 999010000000017: Linked[animalId=1];"
                + " REPORT of 999010000000017 on 2031-01-02: lost, says <Ada>;"
                + " REUNION of 999010000000017 on 2031-01-04: Reunited[]",
            "2: ANIMAL of 999010000000025: UNSTATED; LINK of 999010000000025: Linked[animalId=2];"
                + " REPORT of 999010000000025 on 2031-01-03: found, with Dune Shelter",
            "3: ANIMAL of animal 3: UNSTATED; REPORT of animal 3 on 2031-01-04: found, with <Cleo>",
            "4: ANIMAL of 999010000000033: UNSTATED; LINK of 999010000000033: Linked[animalId=4];"
                + " REUNION of 999010000000033 on 2031-01-05: Reunited[]",
            "5: WORD_MISSING in \"Type\": Expected what is reported, but found nothing",
            "6: DAY_MISSING in \"Day\": Expected the day of the report, but found none");
  }
}
