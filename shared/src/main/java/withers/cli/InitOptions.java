package withers.cli;

import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import withers.organisation.OrganisationKind;
import withers.workspace.FirstSchedule;
import withers.workspace.Member;
import withers.workspace.NewWorkspace;
import withers.workspace.Settings;
import withers.workspace.TestNumbers;

/** What {@code init} can be told on the command line. Use as a mixin. */
final class InitOptions {
  @Option(
      names = "--network",
      paramLabel = "NAME",
      description = "The network's name, for lists and mails. Default: the folder's name.")
  private @Nullable String network;

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      description = "Whose calendar says what today is. Default: this computer's time zone.")
  private @Nullable ZoneId zone;

  @Option(
      names = "--phone-region",
      paramLabel = "XX",
      description = {
        "The country whose rules read phones without a country code.",
        "Default: this computer's country, or ZZ for none."
      })
  private @Nullable String phoneRegion;

  @Option(
      names = "--language",
      paramLabel = "TAG",
      defaultValue = "en",
      description = "Language of lists and mails. Default: ${DEFAULT-VALUE}.")
  private String language = "en";

  @Option(
      names = "--test-numbers",
      paramLabel = "refused|accepted",
      defaultValue = "refused",
      description =
          "Numbers under the standard's test code, 999: accepted is for trials only. Default: ${DEFAULT-VALUE}.")
  private TestNumbers testNumbers = TestNumbers.REFUSED;

  @Option(
      names = "--mail",
      paramLabel = "ADDRESS",
      description = "Where the overview goes. Default: nowhere by mail.")
  private @Nullable String mail;

  @Option(
      names = "--clinic",
      paramLabel = "ORGANISATION",
      description = {
        "A clinic that sends exports: NAME, or \"NAME <MAIL>\" with where its list goes.",
        "As the following three, it can be given again for another one."
      })
  private List<String> clinics = List.of();

  @Option(
      names = "--shelter",
      paramLabel = "ORGANISATION",
      description = "A shelter that sends exports.")
  private List<String> shelters = List.of();

  @Option(
      names = "--seller",
      paramLabel = "ORGANISATION",
      description = "A seller of animals that sends exports.")
  private List<String> sellers = List.of();

  @Option(
      names = "--registry",
      paramLabel = "ORGANISATION",
      description = "A registry that sends exports.")
  private List<String> registries = List.of();

  @Option(
      names = "--schedule",
      paramLabel = "none|nightly|monthly",
      defaultValue = "none",
      description = {
        "What \"withers schedule\" is to do: nightly reads exports and makes lists each night,",
        "monthly reads exports each night and makes lists on the first. Default: ${DEFAULT-VALUE}."
      })
  private FirstSchedule schedule = FirstSchedule.NONE;

  private final Clock clock;

  InitOptions(Clock clock) {
    this.clock = clock;
  }

  /**
   * What was told, and what counts without.
   *
   * @throws IllegalArgumentException when something was told that can't be
   */
  NewWorkspace answers(String folderName) {
    return new NewWorkspace(
        Optional.ofNullable(network).orElse(folderName),
        Optional.ofNullable(zone).orElseGet(clock::getZone),
        Optional.ofNullable(phoneRegion).orElseGet(InitOptions::countryHere),
        language,
        testNumbers,
        Optional.ofNullable(mail),
        members(),
        schedule);
  }

  private List<Member> members() {
    Map<OrganisationKind, List<String>> named =
        Map.of(
            OrganisationKind.CLINIC, clinics,
            OrganisationKind.SHELTER, shelters,
            OrganisationKind.SELLER, sellers,
            OrganisationKind.REGISTRY, registries);
    return Stream.of(OrganisationKind.values())
        .flatMap(
            kind ->
                named.getOrDefault(kind, List.of()).stream().map(text -> Member.parse(kind, text)))
        .toList();
  }

  private static String countryHere() {
    String country = Locale.getDefault().getCountry();
    return country.length() == 2 ? country : Settings.UNKNOWN_REGION;
  }
}
