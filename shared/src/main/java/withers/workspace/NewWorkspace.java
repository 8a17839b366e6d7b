package withers.workspace;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.id.OrganisationId;
import withers.organisation.NameSpelling;
import withers.yaml.Values;

/**
 * What a new workspace starts with.
 *
 * @param network the network's name
 * @param zone whose calendar says what today is
 * @param phoneRegion as in {@link Settings#phoneRegion}
 * @param language a language tag such as {@code en}
 * @param testNumbers whether numbers under the test code are taken
 * @param mail where the coordinator's overview goes
 * @param members organisations that send exports
 * @param schedule what is done without being asked
 */
public record NewWorkspace(
    String network,
    ZoneId zone,
    String phoneRegion,
    String language,
    TestNumbers testNumbers,
    Optional<String> mail,
    List<Member> members,
    FirstSchedule schedule) {
  /** The coordinator's id; no member can have it. */
  static final OrganisationId COORDINATOR = new OrganisationId("coordinator");

  /**
   * Answers as settings take them.
   *
   * @throws IllegalArgumentException for a blank network, a zone without a name in the tz database,
   *     an unknown region or language, an address that is none, two members of one name or id
   */
  public NewWorkspace {
    network = network(network);
    zone = Values.zone(zone.equals(ZoneOffset.UTC) ? "UTC" : zone.getId());
    phoneRegion = region(phoneRegion);
    language = language(language);
    mail = mail.map(NewWorkspace::mail);
    members = List.copyOf(members);
    requireDifferent(network, members);
  }

  /** Settings alone, with nobody to send exports yet. */
  public NewWorkspace(
      String network, ZoneId zone, String phoneRegion, String language, TestNumbers testNumbers) {
    this(
        network,
        zone,
        phoneRegion,
        language,
        testNumbers,
        Optional.empty(),
        List.of(),
        FirstSchedule.NONE);
  }

  /** The network's name, if it is one. */
  public static String network(String text) {
    if (text.isBlank()) {
      throw new IllegalArgumentException("Expected the network's name, but found none");
    }
    return text;
  }

  /** A country's code, if it is one. */
  public static String region(String text) {
    return SettingsReader.region(text);
  }

  /** A language tag, if it is one. */
  public static String language(String text) {
    return SettingsReader.language(text).toLanguageTag();
  }

  /** A mail address, if it is one. */
  public static String mail(String text) {
    return DirectoryReader.mail(text);
  }

  private static void requireDifferent(String network, List<Member> members) {
    Set<Object> taken = new HashSet<>(List.of(COORDINATOR, NameSpelling.key(network)));
    for (Member member : members) {
      if (!taken.add(member.id()) || !taken.add(NameSpelling.key(member.name()))) {
        throw new IllegalArgumentException(
            "Expected a name of its own for each organisation, but found another \"%s\""
                .formatted(member.name()));
      }
    }
  }
}
