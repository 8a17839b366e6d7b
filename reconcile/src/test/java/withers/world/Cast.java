package withers.world;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import withers.contact.Contact;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.organisation.OrganisationKind;
import withers.organisation.Policy;

/**
 * The invented people and organisations of the lines. Phones are from the block that is set aside
 * for fiction.
 */
final class Cast {

  /**
   * By the word that the lines use. A word with an apostrophe is the same person, written
   * otherwise.
   */
  static final Map<String, Contact> PEOPLE =
      Map.ofEntries(
          Map.entry("Ada", person("Ada Stone", "212 555 0101", "ada@example.org", "V1", "1 Quay")),
          Map.entry("Ada'", person("STONE, Áda", "+1 (212) 555-0101", "", "v 1", "1, Quay")),
          Map.entry("AdaMoved", person("Ada Stone", "212 555 0102", "", "V2", "9 Hill")),
          Map.entry("AdaMarried", person("Ada Brook", "212 555 0103", "", "V1", "1 Quay")),
          Map.entry("Adas", person("Ben Stone", "212 555 0193", "", "V1", "1 Quay")),
          Map.entry("Zed", person("Zed Moor", "212 555 0103", "", "", "")),
          Map.entry("Nameless0101", person("", "212 555 0101", "", "", "")),
          Map.entry("Nameless0109", person("", "212 555 0109", "", "", "")),
          Map.entry("AdaNameOnly", person("Ada Stone", "", "", "", "")),
          Map.entry("AdaAddressOnly", person("Ada Stone", "", "", "V1", "1 Quay")),
          Map.entry("Unknown", person("UNKNOWN", "", "", "", "")),
          Map.entry("OwnerNoPhone", person("New owner", "000 000 0000", "none", "V1", "")),
          Map.entry("Owner0101", person("Owner", "212 555 0101", "", "", "")),
          Map.entry("Bo", person("Bo Lind", "212 555 0111", "bo@example.org", "V3", "3 Mill")),
          Map.entry("BoMoved", person("Bo Lind", "212 555 0112", "bo@example.org", "V4", "4 Dam")),
          Map.entry("Cy", person("Cy Marsh", "212 555 0121", "", "V5", "5 Weir")),
          Map.entry("Dee", person("Dee Holt", "212 555 0131", "", "V6", "6 Ford")),
          Map.entry("Carer", person("Finn Foster", "212 555 0141", "", "V7", "7 Lock")),
          Map.entry("CarerMoved", person("Finn Foster", "212 555 0141", "", "V9", "9 Lock")),
          Map.entry("Shelter", person("Harbour Shelter", "", "", "", "")),
          Map.entry("ShelterPhone", person("The Front Desk", "(212) 555-0151", "", "", "")),
          Map.entry("Cattery", person("Cliff Cattery", "", "", "", "")),
          Map.entry("Clinic", person("Hill Clinic", "", "", "", "")),
          Map.entry("Kennels", person("Meadow Kennels", "", "", "", "")));

  static final Directory DIRECTORY =
      Directory.of(
          List.of(
              organisation("shelter", "Harbour Shelter", OrganisationKind.SHELTER, "212 555 0151"),
              organisation("cattery", "Cliff Cattery", OrganisationKind.SHELTER, "212 555 0152"),
              organisation("clinic", "Hill Clinic", OrganisationKind.CLINIC, "212 555 0153"),
              organisation("vale", "Vale Clinic", OrganisationKind.CLINIC, "212 555 0154"),
              organisation("kennels", "Meadow Kennels", OrganisationKind.SELLER, "212 555 0155"),
              organisation("desk", "Lost and Found Desk", OrganisationKind.OTHER, "212 555 0156"),
              organisation("north", "North Register", OrganisationKind.REGISTRY, "212 555 0157"),
              organisation("south", "South Register", OrganisationKind.REGISTRY, "212 555 0158")));

  private Cast() {}

  /** Somebody whom the lines mention; any other word is a person of that name. */
  static Contact contact(String word) {
    return PEOPLE.getOrDefault(word, person(word + " Someone", "", "", "", ""));
  }

  private static Contact person(
      String name, String phone, String email, String postcode, String line) {
    return new Contact(
        name, "", "", List.of(phone), List.of(email), List.of(line), postcode, "", "", "");
  }

  private static Organisation organisation(
      String id, String name, OrganisationKind kind, String phone) {
    boolean isShelter = id.equals("shelter");
    return new Organisation(
        new OrganisationId(id),
        name,
        kind,
        List.of(),
        person(name, phone, "", "", ""),
        Optional.empty(),
        isShelter ? List.of(PEOPLE.get("Carer")) : List.of(),
        id.equals("cattery") ? Set.of(Policy.STAYS_PRIMARY) : Set.of(),
        ranges(id));
  }

  /**
   * Chips 1 to 99 may be with either register, 100 to 199 only with the north, 200 up the south.
   */
  private static List<withers.chip.NumberRange> ranges(String id) {
    return switch (id) {
      case "north" -> List.of(Chips.range(1, 199));
      case "south" -> List.of(Chips.range(1, 99), Chips.range(200, 299));
      default -> List.of();
    };
  }
}
