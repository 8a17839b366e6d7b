package withers.organisation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.chip.RangeNotation;
import withers.contact.Contact;
import withers.id.OrganisationId;

/** All organisations and people are invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DirectoryTest {
  private static final Contact CARER = contact("Kim Quokka", "(212) 555-0101", "kim@example.org");
  private static final Organisation DUNE =
      new Organisation(
          new OrganisationId("dune"),
          "Dune Shelter",
          OrganisationKind.SHELTER,
          List.of("Dunes' Animal Shelter"),
          contact("Dune Shelter", "212-555-0100", "Desk@Dune.example.org"),
          Optional.empty(),
          List.of(CARER),
          Set.of(),
          List.of());
  private static final Organisation COAST = registry("coast", "9990*");
  private static final Organisation ANY = registry("any");
  private static final Directory DIRECTORY = Directory.of(List.of(DUNE, COAST, ANY));

  @Test
  void all_are_in_the_order_of_their_ids() {
    assertThat(DIRECTORY.all()).containsExactly(ANY, COAST, DUNE);
    assertThat(DIRECTORY.find(new OrganisationId("dune"))).contains(DUNE);
    assertThat(DIRECTORY.find(new OrganisationId("dunes"))).isEmpty();
  }

  @Test
  void a_name_or_alias_is_found_in_any_spelling() {
    assertThat(DIRECTORY.named("DUNE  SHELTER")).contains(DUNE);
    assertThat(DIRECTORY.named("Dûne-Shelter.")).contains(DUNE);
    assertThat(DIRECTORY.named("dunes animal shelter")).contains(DUNE);
  }

  @Test
  void a_name_with_another_word_is_another_name() {
    assertThat(DIRECTORY.named("Dune Shelter Ltd")).isEmpty();
    assertThat(DIRECTORY.named("Dune")).isEmpty();
    assertThat(DIRECTORY.named("")).isEmpty();
  }

  @Test
  void registries_that_may_hold_a_number_include_those_without_ranges() {
    assertThat(DIRECTORY.registries()).containsExactly(ANY, COAST);
    assertThat(DIRECTORY.registriesFor(ChipNumber.parse("999012345678901")))
        .containsExactly(ANY, COAST);
    assertThat(DIRECTORY.registriesFor(ChipNumber.parse("999112345678901"))).containsExactly(ANY);
    assertThat(DIRECTORY.registriesFor(ChipNumber.nineDigit(999012345))).containsExactly(ANY);
  }

  @Test
  void carers_belong_to_their_organisation() {
    assertThat(DIRECTORY.carersOf(DUNE.id())).containsExactly(CARER);
    assertThat(DIRECTORY.carersOf(COAST.id())).isEmpty();
    assertThat(DIRECTORY.carersOf(new OrganisationId("unknown"))).isEmpty();
  }

  @Test
  void phones_are_compared_by_the_key_that_is_given_and_mail_without_case() {
    ContactIndex index = DIRECTORY.contactIndex(phone -> phone.replaceAll("[^0-9]", ""));

    assertThat(index.organisationsByPhone("212 555 0100")).containsExactly(DUNE);
    assertThat(index.organisationsByEmail("desk@dune.EXAMPLE.org ")).containsExactly(DUNE);
    assertThat(index.carersByPhone("2125550101")).containsExactly(new Carer(DUNE.id(), CARER));
    assertThat(index.carersByEmail("KIM@example.org")).containsExactly(new Carer(DUNE.id(), CARER));
  }

  @Test
  void what_cannot_be_compared_is_nobodys() {
    ContactIndex index = DIRECTORY.contactIndex(phone -> "");

    assertThat(index.organisationsByPhone("212-555-0100")).isEmpty();
    assertThat(index.organisationsByEmail("")).isEmpty();
    assertThat(index.carersByPhone("")).isEmpty();
  }

  @Test
  void a_phone_and_a_mail_address_of_the_same_text_are_not_the_same() {
    ContactIndex index = DIRECTORY.contactIndex(phone -> "kim@example.org");

    assertThat(index.organisationsByEmail("kim@example.org")).isEmpty();
  }

  @Test
  void a_carer_without_details_shows_none() {
    assertThat(new Carer(DUNE.id(), CARER))
        .hasToString("Carer[organisation=dune, contact=Contact[details withheld]]");
  }

  @Test
  void an_id_twice_is_refused() {
    assertThatThrownBy(() -> Directory.of(List.of(COAST, registry("coast"))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("Expected each organisation id once, but found \"coast\" again");
  }

  @Test
  void a_name_of_two_organisations_is_refused() {
    Organisation other =
        new Organisation(
            new OrganisationId("other"),
            "Other",
            OrganisationKind.OTHER,
            List.of("dune shelter"),
            Contact.NOBODY,
            Optional.empty(),
            List.of(),
            Set.of(),
            List.of());

    assertThatThrownBy(() -> Directory.of(List.of(DUNE, other)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "Expected a name of one organisation, but found \"dune shelter\" for dune and other");
  }

  private static Organisation registry(String id, String... ranges) {
    List<NumberRange> registers = List.of(ranges).stream().map(RangeNotation::read).toList();
    return new Organisation(
        new OrganisationId(id),
        "Registry " + id,
        OrganisationKind.REGISTRY,
        List.of(),
        Contact.NOBODY,
        Optional.empty(),
        List.of(),
        Set.of(),
        registers);
  }

  private static Contact contact(String name, String phone, String email) {
    return new Contact(name, "", "", List.of(phone), List.of(email), List.of(), "", "", "", "");
  }
}
