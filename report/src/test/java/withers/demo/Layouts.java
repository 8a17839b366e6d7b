package withers.demo;

import static withers.demo.Role.FROM;
import static withers.demo.Role.PERSON;
import static withers.demo.Role.SECONDARY;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/** Each source's columns, headers and words: no two organisations keep their files alike. */
final class Layouts {

  private static final Map<String, String> SPECIES_CAPITALS =
      Map.of("dog", "Dog", "cat", "Cat", "rabbit", "Rabbit", "ferret", "Ferret");
  private static final Map<String, String> SPECIES_LATIN =
      Map.of("dog", "canine", "cat", "feline", "rabbit", "lagomorph", "ferret", "mustelid");
  private static final Map<String, String> SPECIES_LETTERS =
      Map.of("dog", "D", "cat", "C", "rabbit", "R", "ferret", "F");
  private static final Map<String, String> SEX_LETTERS = Map.of("female", "F", "male", "M");
  private static final Map<String, String> SEX_BREEDER = Map.of("female", "bitch", "male", "dog");

  private static final Map<Source, UnaryOperator<Columns>> ALL = all();

  private Layouts() {}

  static List<Column> of(Source source) {
    return ALL.get(source).apply(new Columns(source)).list();
  }

  private static Map<Source, UnaryOperator<Columns>> all() {
    Map<Source, UnaryOperator<Columns>> all = new EnumMap<>(Source.class);
    all.put(Source.VENDLEMOUTH_PATIENTS, Layouts::vendlemouth);
    all.put(Source.PELLERWICK_PATIENTS, Layouts::pellerwick);
    all.put(Source.CORVELSEA_PATIENTS, Layouts::corvelsea);
    all.put(Source.NETHERSAY_PATIENTS, Layouts::nethersay);
    all.put(Source.GARROWNESS_STAYS, Layouts::garrowness);
    all.put(Source.HATHERSAND_MOVEMENTS, Layouts::hathersand);
    all.put(Source.ULVERSCAR_STAYS, Layouts::ulverscar);
    all.put(Source.TOLLBARROW_SALES, Layouts::tollbarrow);
    all.put(Source.CORVELSEA_SALES, Layouts::petShop);
    all.put(Source.COAST_REGISTER, Layouts::coastRegister);
    all.put(Source.NORTHERN_REGISTER, Layouts::northernRegister);
    all.put(Source.INLAND_ACCOUNT, Layouts::inlandAccount);
    all.put(Source.BRACKENSAY_REGISTER, Layouts::brackensayRegister);
    all.put(Source.SKARNHOLME_SUPPLY, Layouts::supply);
    all.put(Source.LOST_AND_FOUND, Layouts::lostAndFound);
    return all;
  }

  private static Columns vendlemouth(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_BRACKETS)
        .text("Patient No", Field.KEY)
        .text("Client No", Field.CLIENT)
        .text("Patient", Field.NAME)
        .word("Kind", Field.SPECIES, SPECIES_CAPITALS)
        .word("Sex", Field.SEX, SEX_LETTERS)
        .day("Born", Field.BORN)
        .text("Microchip", Field.CHIP)
        .text("Second microchip", Field.CHIP2)
        .day("Implanted", Field.IMPLANTED)
        .fullName("Client", PERSON)
        .phone("Phone", PERSON)
        .email("E-mail", PERSON)
        .address("Address", "Postcode", "Town", PERSON)
        .day("Last seen", Field.VISIT)
        .day("Died", Field.DIED);
  }

  private static Columns pellerwick(Columns columns) {
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
        .word("Species", Field.SPECIES, SPECIES_LATIN)
        .text("Sex", Field.SEX)
        .day("Date of birth", Field.BORN)
        .text("Transponder", Field.CHIP)
        .text("Other transponder", Field.CHIP2)
        .day("Date of implant", Field.IMPLANTED)
        .day("Last visit", Field.VISIT)
        .day("Deceased on", Field.DIED);
  }

  private static Columns corvelsea(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_ABROAD)
        .text("ID", Field.KEY)
        .groupedChip("CHIP", Field.CHIP)
        .groupedChip("CHIP 2", Field.CHIP2)
        .text("ANIMAL", Field.NAME)
        .word("SPECIES", Field.SPECIES, SPECIES_LETTERS)
        .word("SEX", Field.SEX, SEX_LETTERS)
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

  private static Columns nethersay(Columns columns) {
    return columns
        .withoutAccents()
        .text("Card", Field.KEY)
        .text("Animal", Field.NAME)
        .word("Species", Field.SPECIES, SPECIES_CAPITALS)
        .text("Chip number", Field.CHIP)
        .day("Chip put in", Field.IMPLANTED)
        .day("Last here", Field.VISIT)
        .day("Dead since", Field.DIED)
        .fullName("Keeper", PERSON)
        .phone("Keeper's phone", PERSON)
        .address("House and street", "Postcode", "Village", PERSON);
  }

  private static Columns garrowness(Columns columns) {
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

  private static Columns hathersand(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_DOTS)
        .text("Movement", Field.KEY)
        .text("Animal", Field.ANIMAL)
        .text("Chip", Field.CHIP)
        .text("Called", Field.NAME)
        .word("Kind of animal", Field.SPECIES, SPECIES_CAPITALS)
        .word("Sex", Field.SEX, SEX_LETTERS)
        .day("Date", Field.DAY)
        .word(
            "What happened",
            Field.MOVE,
            Map.ofEntries(
                Map.entry("stray", "came in as stray"),
                Map.entry("surrender", "given up by owner"),
                Map.entry("seizure", "seized"),
                Map.entry("hold-ended", "stray hold over"),
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

  private static Columns ulverscar(Columns columns) {
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

  private static Columns tollbarrow(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_PLAIN)
        .text("Pup", Field.KEY)
        .text("Chip no.", Field.CHIP)
        .text("Name", Field.NAME)
        .word("Sex", Field.SEX, SEX_BREEDER)
        .day("Whelped", Field.BORN)
        .day("Sold", Field.SOLD)
        .filedName("Buyer", PERSON)
        .phone("Buyer's phone", PERSON)
        .email("Buyer's mail", PERSON)
        .address("Street", "Postcode", "Town", PERSON)
        .day("Came back", Field.RETURNED);
  }

  private static Columns petShop(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_ABROAD)
        .text("sale", Field.KEY)
        .day("sold_on", Field.SOLD)
        .text("animal", Field.SPECIES)
        .text("name", Field.NAME)
        .text("sex", Field.SEX)
        .day("born", Field.BORN)
        .text("chip", Field.CHIP)
        .text("customer", Field.CLIENT)
        .givenName("first_name", PERSON)
        .familyName("last_name", PERSON)
        .phone("phone", PERSON)
        .email("email", PERSON)
        .address("address", "postcode", "town", PERSON)
        .day("returned_on", Field.RETURNED);
  }

  private static Columns coastRegister(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_ABROAD)
        .text("registration", Field.KEY)
        .text("chip_number", Field.CHIP)
        .text("account", Field.ACCOUNT)
        .text("animal_name", Field.NAME)
        .word("species", Field.SPECIES, SPECIES_CAPITALS)
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

  private static Columns northernRegister(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_PLAIN)
        .text("No", Field.KEY)
        .text("Transponder number", Field.CHIP)
        .text("Animal", Field.NAME)
        .word("Species", Field.SPECIES, SPECIES_LATIN)
        .day("Registered", Field.SINCE)
        .filedName("Keeper", PERSON)
        .phone("Keeper phone", PERSON)
        .email("Keeper e-mail", PERSON)
        .address("Keeper street", "Keeper postcode", "Keeper town", PERSON)
        .filedName("Second keeper", SECONDARY)
        .phone("Second keeper phone", SECONDARY)
        .day("Cancelled", Field.ENDED);
  }

  private static Columns inlandAccount(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_BRACKETS)
        .text("Ref", Field.KEY)
        .text("Chip", Field.CHIP)
        .text("Account", Field.ACCOUNT)
        .text("Pet", Field.NAME)
        .word("Type", Field.SPECIES, SPECIES_CAPITALS)
        .day("Owner updated", Field.SINCE)
        .fullName("Owner", PERSON)
        .phone("Owner phone", PERSON)
        .email("Owner email", PERSON)
        .address("Owner address", "Owner postcode", "Owner town", PERSON);
  }

  private static Columns brackensayRegister(Columns columns) {
    return columns
        .text("entry", Field.KEY)
        .text("chip", Field.CHIP)
        .text("animal", Field.NAME)
        .day("since", Field.SINCE)
        .fullName("keeper", PERSON)
        .phone("phone", PERSON)
        .address("street", "postcode", "town", PERSON);
  }

  private static Columns supply(Columns columns) {
    return columns
        .text("box", Field.KEY)
        .text("first", Field.FIRST)
        .text("last", Field.LAST)
        .day("delivered", Field.DAY)
        .text("purchaser", Field.PURCHASER)
        .text("prepaid", Field.PREPAID);
  }

  private static Columns lostAndFound(Columns columns) {
    return columns
        .text("Report", Field.KEY)
        .text("Type", Field.REPORT)
        .day("Date", Field.DAY)
        .text("Chip", Field.CHIP)
        .text("Animal", Field.NAME)
        .word("Kind", Field.SPECIES, SPECIES_CAPITALS)
        .text("With", Field.ORG)
        .fullName("Reported by", PERSON)
        .phone("Phone", PERSON)
        .day("Back home on", Field.REUNITED);
  }
}
