package withers.report.overview;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.BEACON;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.SHELTER;
import static withers.report.Coast.TIDELINE;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.finding.Band;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.id.SourceId;
import withers.report.Coast;
import withers.report.Imports;
import withers.report.Samples;
import withers.report.html.Pages;
import withers.report.json.OverviewJson;
import withers.report.text.Texts;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OverviewsTest {
  private final Overview overview = new Samples().overview();

  @Test
  void counts_by_kind_band_and_organisation() {
    assertThat(overview.followUps()).isEqualTo(8);
    assertThat(overview.followUps(FindingKind.CONTACT_BEHIND)).isEqualTo(2);
    assertThat(overview.followUps(Band.THIS_WEEK)).isEqualTo(3);
    assertThat(overview.followUps(FindingKind.UNREGISTERED, Band.THIS_MONTH)).isEqualTo(1);
    assertThat(overview.followUps(FindingKind.UNREGISTERED, Band.TODAY)).isZero();
    assertThat(overview.followUps(SHELTER)).isEqualTo(1);
    assertThat(overview.followUps(CLINIC, Band.THIS_MONTH)).isEqualTo(3);
    assertThat(overview.organisations()).containsExactly(SHELTER, CLINIC);
    assertThat(overview.changes()).isEqualTo(new Overview.Changes(5, 4, 1, 1));
  }

  @Test
  void counts_what_could_not_be_judged_by_registry_and_reason() {
    assertThat(overview.notJudged())
        .containsExactly(
            new Overview.Unjudged(BEACON, NotJudged.Reason.EXPORT_TOO_OLD, 2),
            new Overview.Unjudged(TIDELINE, NotJudged.Reason.ACCOUNT_SLICE_ONLY, 1));
  }

  @Test
  void says_which_source_last_sent_when_and_which_disappearances_are_withheld() {
    assertThat(overview.sources())
        .containsExactly(
            new Overview.SourceStatus(
                new SourceId("harbour-vets-all"), CLINIC, LocalDate.of(2026, 2, 28), 2, List.of()),
            new Overview.SourceStatus(
                new SourceId("tideline-all"),
                TIDELINE,
                LocalDate.of(2026, 2, 26),
                1,
                List.of(new Overview.Withheld(LocalDate.of(2026, 2, 26), 1400))));
  }

  @Test
  void leaves_out_runs_and_exports_after_the_day_that_was_judged() {
    Overview later =
        Overviews.of(
            Coast.run(),
            "Coast Network",
            List.of(
                Imports.of(CLINIC, "2026-03-01", 0),
                Imports.of(CLINIC, "2026-03-02", 0),
                Imports.ofARun("2026-02-01")));

    assertThat(later.sources()).map(Overview.SourceStatus::imports).containsExactly(1L);
    assertThat(later.sources())
        .map(Overview.SourceStatus::newestExport)
        .containsExactly(Coast.TODAY);
  }

  @Test
  void scripts_read_it_as_JSON() {
    assertThat(OverviewJson.of(overview))
        .isEqualToNormalizingNewlines(
            """
            {
              "network" : "Coast Network",
              "run" : "2026-03-01-0123abcd",
              "asOf" : "2026-03-01",
              "knownBy" : null,
              "animals" : 2993,
              "followUps" : 8,
              "changes" : {
                "opened" : 5,
                "stillOpen" : 4,
                "closed" : 1,
                "settledByPeople" : 1
              },
              "questions" : 1,
              "counts" : [ {
                "kind" : "found-waiting",
                "band" : "today",
                "organisation" : "harbour-vets",
                "listed" : true,
                "followUps" : 1
              }, {
                "kind" : "chips-diverge",
                "band" : "this-week",
                "organisation" : "harbour-vets",
                "listed" : true,
                "followUps" : 1
              }, {
                "kind" : "contact-behind",
                "band" : "this-week",
                "organisation" : "dune-shelter",
                "listed" : true,
                "followUps" : 1
              }, {
                "kind" : "contact-behind",
                "band" : "this-week",
                "organisation" : "harbour-vets",
                "listed" : true,
                "followUps" : 1
              }, {
                "kind" : "records-behind",
                "band" : "this-month",
                "organisation" : "harbour-vets",
                "listed" : true,
                "followUps" : 1
              }, {
                "kind" : "unregistered",
                "band" : "this-month",
                "organisation" : "harbour-vets",
                "listed" : true,
                "followUps" : 1
              }, {
                "kind" : "details-differ",
                "band" : "when-possible",
                "organisation" : "harbour-vets",
                "listed" : true,
                "followUps" : 1
              }, {
                "kind" : "number-damaged",
                "band" : "this-month",
                "organisation" : "harbour-vets",
                "listed" : true,
                "followUps" : 1
              } ],
              "notJudged" : [ {
                "registry" : "beacon",
                "reason" : "export-too-old",
                "animals" : 2
              }, {
                "registry" : "tideline",
                "reason" : "account-slice-only",
                "animals" : 1
              } ],
              "sources" : [ {
                "source" : "harbour-vets-all",
                "organisation" : "harbour-vets",
                "newestExport" : "2026-02-28",
                "imports" : 2,
                "withheld" : [ ]
              }, {
                "source" : "tideline-all",
                "organisation" : "tideline",
                "newestExport" : "2026-02-26",
                "imports" : 1,
                "withheld" : [ {
                  "export" : "2026-02-26",
                  "records" : 1400
                } ]
              } ]
            }""");
  }

  @Test
  void neither_page_nor_JSON_names_a_person_a_number_or_a_record() {
    String page = new Pages(Texts.in(Locale.UK)).overview(overview, Coast.DIRECTORY);

    for (String text : List.of(page, OverviewJson.of(overview))) {
      assertThat(text)
          .doesNotContain("Mara", "Linden", "Jonas", "Abel", "Ida", "Thorne", "555", "example.org")
          .doesNotContain("999000", "P-17", "A-300", "Biscuit");
    }
  }
}
