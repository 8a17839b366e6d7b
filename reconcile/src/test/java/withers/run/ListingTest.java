package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.contact.Contact;
import withers.finding.FindingKind;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Extra;
import withers.organisation.Organisation;
import withers.organisation.OrganisationKind;
import withers.organisation.PeriodDays;
import withers.world.Chips;

/** Invented organisations: Tern Vets want two kinds more, Gull Vets none. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ListingTest {

  private static final Listing LISTING =
      new Listing(
          Directory.of(
              List.of(
                  clinic("tern", Set.of(Extra.SCAN_OVERDUE, Extra.NON_ISO_ONLY)),
                  clinic("gull", Set.of()))),
          0);

  private static Organisation clinic(String id, Set<Extra> also) {
    return new Organisation(
        new OrganisationId(id),
        id + " vets",
        OrganisationKind.CLINIC,
        List.of(),
        new Contact(id, "", "", List.of(), List.of(), List.of(), "", "", "", ""),
        Optional.empty(),
        List.of(),
        Set.of(),
        List.of(),
        PeriodDays.NONE,
        also);
  }

  private static boolean isAside(String rule, String actor) {
    return LISTING.isAside(
        new CaseKey(rule, new Anchor.Chip(Chips.chip(100)), new OrganisationId(actor), "p1"));
  }

  @Test
  void kinds_of_little_value_are_set_aside_for_those_who_did_not_ask_for_them() {
    assertThat(isAside("scan-overdue", "gull")).isTrue();
    assertThat(isAside("scan-overdue", "tern")).isFalse();
    assertThat(isAside("registered-after-death", "tern")).isTrue();
    assertThat(isAside("stock-unaccounted", "unknown-to-the-directory")).isTrue();
  }

  @Test
  void each_of_them_is_a_kind_of_finding() {
    for (Extra extra : Extra.values()) {
      String word = extra.name().toLowerCase(Locale.ROOT).replace('_', '-');
      assertThat(FindingKind.of(word).word()).isEqualTo(word);
    }
  }

  @Test
  void everything_else_is_listed_for_everybody() {
    assertThat(isAside("contact-behind", "gull")).isFalse();
    assertThat(isAside("details-differ", "gull")).isFalse();
  }
}
