package withers.contacts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.contact.ContactRef;
import withers.fact.Party;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.matching.Matcher;
import withers.matching.Verdict;
import withers.matching.form.NormalForms;
import withers.world.World;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PeopleTest {
  private static final SourceId SOURCE = new SourceId("clinic");
  private static final OrganisationId CLINIC = new OrganisationId("clinic");

  private final World world =
      World.of(
          """
          clinic 2026-09-30 C1 p1 visit 2026-01-01 Ada
          clinic 2026-09-30 C1 p1 visit 2026-01-02 Bo
          clinic 2026-09-30 C1 p1 visit 2026-01-03 Shelter
          clinic 2026-09-30 C1 p1 visit 2026-01-04 ShelterPhone
          clinic 2026-09-30 C1 p1 visit 2026-01-05 Carer
          clinic 2026-09-30 C1 p1 visit 2026-01-06 CarerMoved
          """);

  @Test
  void a_contact_with_an_organisation_s_name_or_phone_is_that_organisation() {
    assertThat(who("Shelter")).isEqualTo(organisation("shelter"));
    assertThat(who("ShelterPhone")).isEqualTo(organisation("shelter"));
  }

  @Test
  void a_carer_stands_for_the_organisation_even_after_a_move() {
    assertThat(who("Carer")).isEqualTo(organisation("shelter"));
    assertThat(who("CarerMoved")).isEqualTo(organisation("shelter"));
  }

  @Test
  void everyone_else_is_a_person_of_the_source_that_names_them() {
    assertThat(who("Ada")).isEqualTo(new Who.Person(world.reference("Ada"), SOURCE, CLINIC));
  }

  @Test
  void a_named_organisation_is_in_the_directory_or_outside() {
    assertThat(who(new Party.Organisation("harbour SHELTER"))).isEqualTo(organisation("shelter"));
    assertThat(who(new Party.Organisation("Far Away"))).isEqualTo(new Who.Outside("Far Away"));
    assertThat(who(new Party.Own())).isEqualTo(organisation("clinic"));
    assertThat(who(new Party.Unstated())).isEqualTo(new Who.Nobody());
  }

  @Test
  void organisations_are_compared_by_identity() {
    assertThat(verdict(organisation("shelter"), organisation("shelter"))).isEqualTo(Verdict.SAME);
    assertThat(verdict(organisation("shelter"), organisation("vale"))).isEqualTo(Verdict.DIFFERENT);
    assertThat(verdict(organisation("shelter"), who("Ada"))).isEqualTo(Verdict.DIFFERENT);
    assertThat(verdict(new Who.Outside("Far Away"), new Who.Outside("FAR-AWAY")))
        .isEqualTo(Verdict.SAME);
  }

  @Test
  void nobody_can_t_be_told() {
    assertThat(verdict(new Who.Nobody(), who("Ada"))).isEqualTo(Verdict.CANNOT_TELL);
  }

  @Test
  void a_contact_that_states_nothing_is_nobody() {
    assertThat(who("Unknown")).isEqualTo(new Who.Nobody());
    assertThat(who("OwnerNoPhone")).isEqualTo(new Who.Nobody());
    assertThat(who("Owner0101")).isInstanceOf(Who.Person.class);
    assertThat(verdict(who("Owner0101"), who("Ada"))).isEqualTo(Verdict.SAME);
    assertThat(world.people().areReachedAlike(who("Owner0101"), who("Ada"))).isTrue();
  }

  @Test
  void a_contact_that_was_forgotten_is_not_nobody() {
    world.vault().forget(List.of(world.reference("Unknown")), List.of());

    assertThat(who("Unknown")).isInstanceOf(Who.Person.class);
  }

  @Test
  void somebody_who_was_forgotten_can_t_be_told() {
    world.vault().forget(List.of(world.reference("Bo")), List.of());

    assertThat(verdict(who("Ada"), who("Bo"))).isEqualTo(Verdict.CANNOT_TELL);
    assertThat(verdict(organisation("shelter"), who("Bo"))).isEqualTo(Verdict.CANNOT_TELL);
    assertThat(world.people().isKnown((Who.Person) who("Bo"))).isFalse();
  }

  @Test
  void equal_references_are_the_same_without_a_look_into_the_vault() {
    People blind =
        new People(
            World.DIRECTORY,
            reference -> {
              throw new IllegalStateException("Looked");
            },
            new NormalForms("US"),
            Matcher.builtIn());
    Who ada = new Who.Person(world.reference("Ada"), SOURCE, CLINIC);

    assertThat(blind.verdict(ada, ada)).isEqualTo(Verdict.SAME);
  }

  private Verdict verdict(Who one, Who other) {
    return world.people().verdict(one, other);
  }

  private Who who(String word) {
    ContactRef reference = world.reference(word);
    return who(new Party.Contact(reference, Optional.empty()));
  }

  private Who who(Party party) {
    return world.people().who(party, SOURCE, CLINIC);
  }

  private static Who organisation(String id) {
    return new Who.Organisation(new OrganisationId(id));
  }
}
