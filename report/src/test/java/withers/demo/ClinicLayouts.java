package withers.demo;

import static withers.demo.Role.PERSON;

import java.util.Map;

/** The columns of the clinics' patient exports. */
final class ClinicLayouts {

  private ClinicLayouts() {}

  static Columns vendlemouth(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_BRACKETS)
        .text("Patient No", Field.KEY)
        .text("Client No", Field.CLIENT)
        .text("Patient", Field.NAME)
        .word("Kind", Field.SPECIES, Words.SPECIES_CAPITALS)
        .word("Sex", Field.SEX, Words.SEX_LETTERS)
        .day("Born", Field.BORN)
        .text("Microchip", Field.CHIP)
        .text("Second microchip", Field.CHIP2)
        .day("Implanted", Field.IMPLANTED)
        .fullName("Client", PERSON)
        .phone("Phone", PERSON)
        .email("E-mail", PERSON)
        .address("Address", "Postcode", "Town", PERSON)
        .day("Last seen", Field.VISIT)
        .day("Scanned", Field.SCANNED)
        .word("Scan result", Field.SCAN, Map.of("read", "number", "not-detected", "nothing"))
        .day("Died", Field.DIED);
  }

  static Columns pellerwick(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_PLAIN)
        .text("Record", Field.KEY)
        .text("Owner ref", Field.CLIENT)
        .familyName("Surname", PERSON)
        .givenName("First name", PERSON)
        .phone("Telephone", PERSON)
        .email("Mail", PERSON)
        .address("Street", "Code", "Place", PERSON)
        .text("Pet name", Field.NAME)
        .word("Species", Field.SPECIES, Words.SPECIES_LATIN)
        .text("Sex", Field.SEX)
        .day("Date of birth", Field.BORN)
        .text("Transponder", Field.CHIP)
        .text("Other transponder", Field.CHIP2)
        .day("Date of implant", Field.IMPLANTED)
        .day("Last visit", Field.VISIT)
        .day("Last scan", Field.SCANNED)
        .word("Scan", Field.SCAN, Map.of("read", "ok", "not-detected", "no answer"))
        .day("Deceased on", Field.DIED);
  }

  static Columns corvelsea(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_ABROAD)
        .text("ID", Field.KEY)
        .groupedChip("CHIP", Field.CHIP)
        .groupedChip("CHIP 2", Field.CHIP2)
        .text("ANIMAL", Field.NAME)
        .word("SPECIES", Field.SPECIES, Words.SPECIES_LETTERS)
        .word("SEX", Field.SEX, Words.SEX_LETTERS)
        .day("DOB", Field.BORN)
        .day("CHIPPED", Field.IMPLANTED)
        .day("SEEN", Field.VISIT)
        .day("DECEASED", Field.DIED)
        .text("OWNER ID", Field.CLIENT)
        .filedName("OWNER", PERSON)
        .phone("TEL", PERSON)
        .email("EMAIL", PERSON)
        .address("STREET", "POSTCODE", "TOWN", PERSON);
  }

  static Columns nethersay(Columns columns) {
    return columns
        .withoutAccents()
        .text("Card", Field.KEY)
        .text("Animal", Field.NAME)
        .word("Species", Field.SPECIES, Words.SPECIES_CAPITALS)
        .text("Chip number", Field.CHIP)
        .day("Chip put in", Field.IMPLANTED)
        .day("Last here", Field.VISIT)
        .day("Dead since", Field.DIED)
        .fullName("Keeper", PERSON)
        .phone("Keeper's phone", PERSON)
        .address("House and street", "Postcode", "Village", PERSON);
  }
}
