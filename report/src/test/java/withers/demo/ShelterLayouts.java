package withers.demo;

import static withers.demo.Role.FROM;
import static withers.demo.Role.PERSON;

import java.util.Map;

/** The columns of the shelters: stays, movements. */
final class ShelterLayouts {

  private ShelterLayouts() {}

  static Columns garrowness(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_BRACKETS)
        .text("stay", Field.KEY)
        .text("animal_id", Field.ANIMAL)
        .text("microchip", Field.CHIP)
        .text("name", Field.NAME)
        .text("species", Field.SPECIES)
        .text("sex", Field.SEX)
        .day("born", Field.BORN)
        .day("intake_date", Field.IN_DAY)
        .word(
            "intake_type",
            Field.IN_HOW,
            Map.of(
                "stray", "STRAY",
                "surrender", "OWNER SURRENDER",
                "returned", "ADOPTION RETURN",
                "transfer", "TRANSFER IN"))
        .text("intake_from_org", Field.IN_ORG)
        .fullName("intake_from", FROM)
        .phone("intake_phone", FROM)
        .day("outcome_date", Field.OUT_DAY)
        .word(
            "outcome_type",
            Field.OUT_HOW,
            Map.of(
                "adoption", "ADOPTION",
                "owner", "RETURN TO OWNER",
                "transfer", "TRANSFER OUT",
                "foster", "FOSTER",
                "trial", "TRIAL",
                "died", "DIED IN CARE"))
        .text("outcome_to_org", Field.OUT_ORG)
        .fullName("outcome_to", PERSON)
        .phone("outcome_phone", PERSON)
        .email("outcome_email", PERSON)
        .address("outcome_address", "outcome_postcode", "outcome_town", PERSON);
  }

  static Columns hathersand(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_DOTS)
        .text("Movement", Field.KEY)
        .text("Animal", Field.ANIMAL)
        .text("Chip", Field.CHIP)
        .text("Called", Field.NAME)
        .word("Kind of animal", Field.SPECIES, Words.SPECIES_CAPITALS)
        .word("Sex", Field.SEX, Words.SEX_LETTERS)
        .day("Date", Field.DAY)
        .word(
            "What happened",
            Field.MOVE,
            Map.ofEntries(
                Map.entry("stray", "came in as stray"),
                Map.entry("surrender", "given up by owner"),
                Map.entry("seizure", "seized"),
                Map.entry("hold-ended", "stray hold over"),
                Map.entry("import", "brought from abroad"),
                Map.entry("transfer-in", "came from another shelter"),
                Map.entry("transfer-out", "went to another shelter"),
                Map.entry("foster", "to foster carer"),
                Map.entry("trial", "to new home on trial"),
                Map.entry("trial-final", "trial made final"),
                Map.entry("adoption", "adopted"),
                Map.entry("adoption-return", "brought back by adopter"),
                Map.entry("owner", "back to owner"),
                Map.entry("died", "died")))
        .text("Other shelter", Field.ORG)
        .familyName("Family name", PERSON)
        .givenName("Given name", PERSON)
        .phone("Phone", PERSON)
        .email("E-mail", PERSON)
        .address("Address", "Postcode", "Town", PERSON);
  }

  static Columns ulverscar(Columns columns) {
    return columns
        .text("Nr", Field.KEY)
        .text("Cat", Field.NAME)
        .text("Chip", Field.CHIP)
        .word("f/m", Field.SEX, Map.of("female", "f", "male", "m"))
        .day("Arrived", Field.IN_DAY)
        .word(
            "How",
            Field.IN_HOW,
            Map.of(
                "stray", "found",
                "surrender", "given up",
                "returned", "came back",
                "transfer", "from shelter"))
        .text("From shelter", Field.IN_ORG)
        .fullName("From whom", FROM)
        .day("Left", Field.OUT_DAY)
        .word(
            "Why",
            Field.OUT_HOW,
            Map.of(
                "adoption", "rehomed",
                "owner", "went home",
                "transfer", "moved to shelter",
                "colony", "back to colony",
                "died", "dead"))
        .text("To shelter", Field.OUT_ORG)
        .fullName("To whom", PERSON)
        .phone("Phone", PERSON)
        .address("Where", "Postcode", "Town", PERSON);
  }
}
