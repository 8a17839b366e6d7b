package withers.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.contact.Contact;
import withers.id.OrganisationId;
import withers.organisation.Extra;
import withers.organisation.Organisation;
import withers.organisation.OrganisationKind;
import withers.organisation.Period;
import withers.organisation.PeriodDays;
import withers.organisation.Policy;
import withers.yaml.ConfigException;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class WorkspaceConfigurationTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2031-03-01T12:00:00Z"), ZoneOffset.UTC);
  private static final String SETTINGS =
      """
      network: Coast Network
      zone: Europe/Lisbon
      coordinator: coast
      """;
  private static final String ORGANISATIONS =
      """
      organisations:
        - id: coast
          name: Coast Network
          kind: coordinator
      """;

  @TempDir private Path temp;

  @Test
  void settings_that_are_left_out_have_defaults() throws IOException {
    assertThat(open(SETTINGS, ORGANISATIONS).settings())
        .isEqualTo(
            new Settings(
                "Coast Network",
                ZoneId.of("Europe/Lisbon"),
                "ZZ",
                Locale.ENGLISH,
                TestNumbers.REFUSED,
                new OrganisationId("coast"),
                PeriodDays.NONE,
                Map.of(),
                3,
                60,
                45,
                10,
                UnchangedRecords.RECOGNISED,
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                WatchSettings.NONE,
                Set.of(),
                Retention.EVERYTHING,
                MailSettings.DEFAULT));
  }

  @Test
  void an_organisation_is_read_with_all_its_keys() throws IOException {
    Workspace workspace =
        open(
            SETTINGS,
            ORGANISATIONS
                + """
                  - id: coast-registry
                    name: Coast Registry
                    kind: registry
                    aliases: [CR, Registry of the Coast]
                    phones: [+1 212 555 0100]
                    emails: desk@registry.example.org
                    address:
                      - 1 Quay Street
                      - Floor 2
                    postcode: 00001
                    town: Harbourtown
                    region: Coast
                    country: PT
                    mail: lists@registry.example.org
                    policies: [stays-secondary]
                    carers:
                      - name: Kim Quokka
                        phones: [555-0101]
                    registers: [9990*, 123456789, 0A0B0C0D00 - 0A0B0C0DFF]
                """);

    assertThat(workspace.directory().find(new OrganisationId("coast-registry")))
        .contains(
            new Organisation(
                new OrganisationId("coast-registry"),
                "Coast Registry",
                OrganisationKind.REGISTRY,
                List.of("CR", "Registry of the Coast"),
                new Contact(
                    "Coast Registry",
                    "",
                    "",
                    List.of("+1 212 555 0100"),
                    List.of("desk@registry.example.org"),
                    List.of("1 Quay Street", "Floor 2"),
                    "00001",
                    "Harbourtown",
                    "Coast",
                    "PT"),
                Optional.of("lists@registry.example.org"),
                List.of(
                    new Contact(
                        "Kim Quokka",
                        "",
                        "",
                        List.of("555-0101"),
                        List.of(),
                        List.of(),
                        "",
                        "",
                        "",
                        "")),
                Set.of(Policy.STAYS_SECONDARY),
                List.of(
                    new NumberRange(ChipNumber.iso(999, 0), ChipNumber.iso(999, 99_999_999_999L)),
                    new NumberRange(
                        ChipNumber.nineDigit(123456789), ChipNumber.nineDigit(123456789)),
                    new NumberRange(
                        ChipNumber.tenCharacter("0A0B0C0D00"),
                        ChipNumber.tenCharacter("0A0B0C0DFF")))));
  }

  @Test
  void periods_are_read_for_the_workspace_for_regions_and_for_an_organisation() throws IOException {
    Workspace workspace =
        open(
            SETTINGS
                + """
                grace-days: 21
                scan-overdue-days: 500
                regions:
                  The North: {stray-hold-days: 5, grace-days: 14}
                """,
            ORGANISATIONS
                + """
                  - {id: dune-shelter, name: Dune Shelter, kind: shelter, region: the north, periods: {stock-days: 90}}
                """);

    assertThat(workspace.settings().periods())
        .isEqualTo(new PeriodDays(Map.of(Period.GRACE, 21, Period.SCAN_OVERDUE, 500)));
    assertThat(workspace.settings().regions())
        .isEqualTo(
            Map.of("The North", new PeriodDays(Map.of(Period.STRAY_HOLD, 5, Period.GRACE, 14))));
    assertThat(
            workspace.directory().find(new OrganisationId("dune-shelter")).orElseThrow().periods())
        .isEqualTo(new PeriodDays(Map.of(Period.STOCK, 90)));
  }

  @Test
  void what_an_organisation_wants_on_its_list_besides() throws IOException {
    Workspace workspace =
        open(
            SETTINGS,
            ORGANISATIONS
                + "  - {id: dune-vets, name: Dune Vets, kind: clinic, also: [scan-overdue, non-iso-only]}\n");

    assertThat(workspace.directory().find(new OrganisationId("dune-vets")).orElseThrow().also())
        .containsExactlyInAnyOrder(Extra.SCAN_OVERDUE, Extra.NON_ISO_ONLY);
    assertRefused(
        SETTINGS,
        ORGANISATIONS + "  - {id: dune-vets, name: Dune Vets, kind: clinic, also: scan-overdeu}\n",
        "Expected one of registered-elsewhere, scan-overdue, non-iso-only, registered-after-death,"
            + " stock-unaccounted, but found \"scan-overdeu\" (organisations.yaml, line 5, column 58):"
            + " did you mean \"scan-overdue\"?");
  }

  @Test
  void periods_that_are_none_and_a_region_that_no_organisation_has() {
    assertRefused(
        SETTINGS
            + "stock-days: 0\nregions:\n  North: {grace: 14}\n  South: {stray-hold-days: 1.5}\n",
        ORGANISATIONS + "  - {id: dune-shelter, name: Dune Shelter, kind: shelter, region: Nord}\n",
        """
        The configuration has 3 mistakes:
          Expected a whole number from 1 to 3660, but found "0" (withers.yaml, line 4, column 13)
          Expected one of "grace-days", "stray-hold-days", "scan-overdue-days", "stock-days", "active-days", "confirmed-days", but found "grace" (withers.yaml, line 6, column 11)
          Expected a whole number from 0 to 366, but found "1.5" (withers.yaml, line 7, column 28)\
        """);
    assertRefused(
        SETTINGS + "regions:\n  North: {grace-days: 14}\n",
        ORGANISATIONS
            + "  - {id: dune-shelter, name: Dune Shelter, kind: shelter, region: Norte}\n",
        "Expected the region of an organisation in organisations.yaml, but found \"North\""
            + " (withers.yaml, line 5, column 3): did you mean \"Norte\"?");
  }

  @Test
  void three_mistakes_in_two_files_are_told_together_with_their_lines() {
    assertRefused(
        """
        network: Coast Network
        zone: Europe/Lisboa
        coordinator: coast
        grace-days: 30 days
        """,
        """
        organistions:
          - id: coast
        """,
        """
        The configuration has 3 mistakes:
          Expected one of "organisations", but found "organistions" (organisations.yaml, line 1, column 1):\
         did you mean "organisations"?
          Expected a time zone such as Europe/Lisbon or America/New_York, but found "Europe/Lisboa"\
         (withers.yaml, line 2, column 7)
          Expected a whole number from 0 to 366, but found "30 days" (withers.yaml, line 4, column 13)\
        """);
  }

  @Test
  void a_country_a_language_and_a_choice_that_are_none() {
    assertRefused(
        SETTINGS + "phone-region: PRT\nlanguage: en_GB\ntest-numbers: accept\n",
        ORGANISATIONS,
        """
        The configuration has 3 mistakes:
          Expected a country of two capital letters such as PT or US, or ZZ for none, but found "PRT"\
         (withers.yaml, line 4, column 15)
          Expected a language such as en, en-GB or pt, but found "en_GB" (withers.yaml, line 5, column 11)
          Expected one of refused, accepted, but found "accept" (withers.yaml, line 6, column 15):\
         did you mean "accepted"?\
        """);
  }

  @Test
  void a_coordinator_that_the_directory_lacks() {
    assertRefused(
        SETTINGS.replace("coordinator: coast", "coordinator: coats"),
        ORGANISATIONS,
        "Expected the id of an organisation in organisations.yaml, but found \"coats\""
            + " (withers.yaml, line 3, column 14): did you mean \"coast\"?");
  }

  @Test
  void a_coordinator_whose_entry_has_a_mistake_is_not_told_as_missing() {
    assertRefused(
        SETTINGS,
        ORGANISATIONS.replace("kind: coordinator", "kind: co-ordinator"),
        "Expected one of clinic, shelter, seller, registry, coordinator, other, but found \"co-ordinator\""
            + " (organisations.yaml, line 4, column 11): did you mean \"coordinator\"?");
  }

  @Test
  void an_id_given_twice_names_both_lines() {
    assertRefused(
        SETTINGS,
        ORGANISATIONS + "  - id: coast\n    name: Another\n    kind: clinic\n",
        "Expected each id once, but found \"coast\" again (organisations.yaml, line 5, column 9):"
            + " line 2 has it already");
  }

  @Test
  void names_and_aliases_that_collide_name_both_lines_whatever_their_spelling() {
    assertRefused(
        SETTINGS,
        ORGANISATIONS
            + """
              - id: dune
                name: Dune Vets
                kind: clinic
                aliases:
                  - Dûne-Vets
                  - The Vets
              - id: quay
                name: the vets!
                kind: clinic
                aliases: [COAST network]
            """,
        """
        The configuration has 2 mistakes:
          Expected a name of one organisation, but found "the vets!" again (organisations.yaml, line 12, column 11):\
         line 10 has it already
          Expected a name of one organisation, but found "COAST network" again\
         (organisations.yaml, line 14, column 15): line 3 has it already\
        """);
  }

  @Test
  void a_name_without_letters_or_digits() {
    assertRefused(
        SETTINGS,
        ORGANISATIONS + "  - id: dune\n    name: '---'\n    kind: clinic\n",
        "Expected a name with a letter or digit, but found none (organisations.yaml, line 6, column 11)");
  }

  @Test
  void an_id_that_is_no_id() {
    assertRefused(
        SETTINGS,
        ORGANISATIONS + "  - id: Dune Vets\n    name: Dune\n    kind: clinic\n",
        "Expected an organisation id of 1 to 40 lower-case letters, digits and dashes, but found \"Dune Vets\""
            + " (organisations.yaml, line 5, column 9)");
  }

  @Test
  void two_ids_that_are_no_ids_are_not_told_as_one_id_twice() {
    assertRefused(
        SETTINGS,
        ORGANISATIONS
            + """
              - id: A!
                name: Dune
                kind: clinic
              - id: B!
                name: dune
                kind: clinic
            """,
        """
        The configuration has 3 mistakes:
          Expected an organisation id of 1 to 40 lower-case letters, digits and dashes, but found "A!"\
         (organisations.yaml, line 5, column 9)
          Expected an organisation id of 1 to 40 lower-case letters, digits and dashes, but found "B!"\
         (organisations.yaml, line 8, column 9)
          Expected a name of one organisation, but found "dune" again (organisations.yaml, line 9, column 11):\
         line 6 has it already\
        """);
  }

  @Test
  void ranges_that_hold_no_number_or_stand_in_the_wrong_place() {
    assertRefused(
        SETTINGS,
        ORGANISATIONS
            + """
              - id: registry
                name: Registry
                kind: registry
                registers: [9993*, all, 999000000000009-999000000000001]
              - id: dune
                name: Dune
                kind: clinic
                registers: [9990*]
            """,
        """
        The configuration has 4 mistakes:
          Expected the first digits of a chip number, but found "9993*", which no number starts with\
         (organisations.yaml, line 8, column 17)
          Expected a range such as 999000000000000-999000000000999 or 9990*, but found "all"\
         (organisations.yaml, line 8, column 24)
          Expected a range whose last number follows its first, but found 999000000000009 to 999000000000001\
         (organisations.yaml, line 8, column 29)
          Expected number ranges of a registry only, but found some here (organisations.yaml, line 12, column 16):\
         remove them\
        """);
  }

  @Test
  void mistakes_about_people_show_no_details() {
    assertRefused(
        SETTINGS,
        ORGANISATIONS
            + """
              - id: dune
                name: Dune
                kind: shelter
                mail: Kim Quokka <kim@example.org>
                carers:
                  - Kim Quokka
                  - name: [Kim Quokka]
                  - Kim Quokka: 555-0101
            """,
        """
        The configuration has 5 mistakes:
          Expected an e-mail address such as lists@example.org, but found something else\
         (organisations.yaml, line 8, column 11)
          Expected lines of "key: value" under "carers", but found text (organisations.yaml, line 10, column 9)
          Expected a single value for "name", but found a list (organisations.yaml, line 11, column 15)
          Expected one of "name", "phones", "emails", "address", "postcode", "town", "region", "country",\
         but found another key (organisations.yaml, line 12, column 9)
          Expected the key "name", but found none (organisations.yaml, line 12, column 9): add it\
        """);
  }

  @Test
  void a_missing_directory_file() throws IOException {
    Files.writeString(temp.resolve("withers.yaml"), SETTINGS);

    assertThatThrownBy(() -> Workspace.open(temp, CLOCK))
        .isInstanceOf(ConfigException.class)
        .hasMessage("Expected a file, but found none (organisations.yaml)");
  }

  @Test
  void a_missing_list_of_organisations() {
    assertRefused(
        SETTINGS,
        "organisations:\n",
        "Expected the key \"organisations\", but found none (organisations.yaml, line 1, column 1): add it");
  }

  @Test
  void an_empty_list_of_organisations() {
    assertRefused(
        SETTINGS,
        "organisations: []\n",
        "Expected the id of an organisation in organisations.yaml, but found \"coast\""
            + " (withers.yaml, line 3, column 14): add the organisation, or name another");
  }

  private void assertRefused(String settings, String organisations, String message) {
    assertThatThrownBy(() -> open(settings, organisations))
        .isInstanceOf(ConfigException.class)
        .hasMessage(message);
  }

  private Workspace open(String settings, String organisations) throws IOException {
    Files.writeString(temp.resolve("withers.yaml"), settings);
    Files.writeString(temp.resolve("organisations.yaml"), organisations);
    return Workspace.open(temp, CLOCK);
  }
}
