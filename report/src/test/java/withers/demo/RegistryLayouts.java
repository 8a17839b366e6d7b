package withers.demo;

import static withers.demo.Role.PERSON;
import static withers.demo.Role.SECONDARY;

/** The columns of the registries. */
final class RegistryLayouts {

  private RegistryLayouts() {}

  static Columns coastRegister(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_ABROAD)
        .text("registration", Field.KEY)
        .text("chip_number", Field.CHIP)
        .text("account", Field.ACCOUNT)
        .text("animal_name", Field.NAME)
        .word("species", Field.SPECIES, Words.SPECIES_CAPITALS)
        .day("contact_since", Field.SINCE)
        .givenName("given_name", PERSON)
        .familyName("family_name", PERSON)
        .phone("phone", PERSON)
        .email("email", PERSON)
        .address("address", "postcode", "town", PERSON)
        .fullName("second_contact", SECONDARY)
        .phone("second_phone", SECONDARY)
        .day("ended_on", Field.ENDED)
        .text("end_reason", Field.END_REASON);
  }

  static Columns northernRegister(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_PLAIN)
        .text("No", Field.KEY)
        .text("Transponder number", Field.CHIP)
        .text("Animal", Field.NAME)
        .word("Species", Field.SPECIES, Words.SPECIES_LATIN)
        .day("Registered", Field.SINCE)
        .filedName("Keeper", PERSON)
        .phone("Keeper phone", PERSON)
        .email("Keeper e-mail", PERSON)
        .address("Keeper street", "Keeper postcode", "Keeper town", PERSON)
        .filedName("Second keeper", SECONDARY)
        .phone("Second keeper phone", SECONDARY)
        .day("Cancelled", Field.ENDED);
  }

  static Columns inlandAccount(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_BRACKETS)
        .text("Ref", Field.KEY)
        .text("Chip", Field.CHIP)
        .text("Account", Field.ACCOUNT)
        .text("Pet", Field.NAME)
        .word("Type", Field.SPECIES, Words.SPECIES_CAPITALS)
        .day("Owner updated", Field.SINCE)
        .fullName("Owner", PERSON)
        .phone("Owner phone", PERSON)
        .email("Owner email", PERSON)
        .address("Owner address", "Owner postcode", "Owner town", PERSON);
  }

  static Columns brackensayRegister(Columns columns) {
    return columns
        .text("entry", Field.KEY)
        .text("chip", Field.CHIP)
        .text("animal", Field.NAME)
        .day("since", Field.SINCE)
        .fullName("keeper", PERSON)
        .phone("phone", PERSON)
        .address("street", "postcode", "town", PERSON);
  }
}
