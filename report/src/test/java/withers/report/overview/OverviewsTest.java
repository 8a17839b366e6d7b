package withers.report.overview;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.BEACON;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.SHELTER;
import static withers.report.Coast.TIDELINE;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
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
import withers.report.chart.Chart;
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
    assertThat(overview.changes()).isEqualTo(new Overview.Changes(5, 4, 1, 1, 0, 0, 0));
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
                new SourceId("harbour-vets-all"),
                CLINIC,
                LocalDate.of(2026, 2, 28),
                false,
                2,
                new Quality(10, 0, 0, 0),
                List.of()),
            new Overview.SourceStatus(
                new SourceId("tideline-all"),
                TIDELINE,
                LocalDate.of(2026, 1, 26),
                true,
                1,
                new Quality(10, 0, 0, 0),
                List.of(new Overview.Withheld(LocalDate.of(2026, 1, 26), 1400))));
  }

  @Test
  void says_of_whom_nothing_came_in_within_the_month_and_of_whom_nothing_ever_did() {
    assertThat(overview.late()).map(Overview.SourceStatus::organisation).containsExactly(TIDELINE);
    assertThat(overview.silent()).containsExactly(BEACON, SHELTER);
  }

  @Test
  void an_export_of_the_same_day_of_the_month_before_is_in_time_and_one_a_day_older_is_late() {
    Overview day =
        Overviews.of(
            Coast.run(),
            Coast.background(
                List.of(Imports.of(CLINIC, "2026-02-01", 0), Imports.of(SHELTER, "2026-01-31", 0)),
                List.of()));

    assertThat(day.late()).map(Overview.SourceStatus::organisation).containsExactly(SHELTER);
  }

  @Test
  void tells_whose_follow_ups_were_settled_in_this_run_and_in_all_of_the_trend() {
    assertThat(overview.settlers()).containsExactly(SHELTER, CLINIC);
    assertThat(overview.settledLately(CLINIC, 1)).isEqualTo(1);
    assertThat(overview.settledLately(SHELTER, 1)).isZero();
    assertThat(overview.settledLately(SHELTER, 12)).isEqualTo(2);
  }

  @Test
  void a_trend_has_twelve_runs_at_most_and_ends_with_this_one() {
    List<RunFigures> many =
        IntStream.range(1, 20)
            .mapToObj(
                day ->
                    new RunFigures(
                        "run-" + day,
                        LocalDate.of(2026, 2, day),
                        0,
                        List.of(0L, 0L, 0L, 0L),
                        0,
                        List.of()))
            .toList();

    List<RunFigures> trend = Overviews.of(Coast.run(), Coast.background(List.of(), many)).trend();

    assertThat(trend).hasSize(12);
    assertThat(trend.get(0).run()).isEqualTo("run-9");
    assertThat(trend.get(11)).isEqualTo(RunFigures.of(Coast.run()));
  }

  @Test
  void the_charts_have_a_row_for_each_band_and_for_what_came_and_went() {
    List<Chart> charts = Trends.of(overview, Texts.in(Locale.UK));

    assertThat(charts)
        .map(Chart::title)
        .containsExactly("Open follow-ups", "New and settled follow-ups");
    assertThat(charts.get(0).columns()).containsExactly("1 Feb 2026", "1 Mar 2026");
    assertThat(charts.get(0).rows())
        .contains(
            new Chart.Row("Today", List.of(2L, 1L)), new Chart.Row("This week", List.of(1L, 3L)));
    assertThat(charts.get(0).description()).startsWith("Today: 2 at first, 1 at last. This week:");
    assertThat(charts.get(1).rows())
        .containsExactly(
            new Chart.Row("New", List.of(7L, 5L)), new Chart.Row("Settled", List.of(2L, 1L)));
  }

  @Test
  void there_is_no_trend_before_the_second_run() {
    Overview first = Overviews.of(Coast.run(), Coast.background(List.of(), List.of()));

    assertThat(Trends.of(first, Texts.in(Locale.UK))).isEmpty();
    assertThat(new Pages(Texts.in(Locale.UK)).overview(first, Coast.DIRECTORY))
        .contains("There is one run so far.")
        .doesNotContain("<svg");
  }

  @Test
  void leaves_out_runs_and_exports_after_the_day_that_was_judged() {
    Overview later =
        Overviews.of(
            Coast.run(),
            Coast.background(
                List.of(
                    Imports.of(CLINIC, "2026-03-01", 0),
                    Imports.of(CLINIC, "2026-03-02", 0),
                    Imports.ofARun("2026-02-01")),
                List.of()));

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
                "settledByPeople" : 1,
                "answered" : 0,
                "snoozed" : 0,
                "closedAfterAnswers" : 0
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
                "late" : false,
                "imports" : 2,
                "quality" : {
                  "rows" : 10,
                  "rejected" : 0,
                  "damaged" : 0,
                  "unnumbered" : 0
                },
                "withheld" : [ ]
              }, {
                "source" : "tideline-all",
                "organisation" : "tideline",
                "newestExport" : "2026-01-26",
                "late" : true,
                "imports" : 1,
                "quality" : {
                  "rows" : 10,
                  "rejected" : 0,
                  "damaged" : 0,
                  "unnumbered" : 0
                },
                "withheld" : [ {
                  "export" : "2026-01-26",
                  "records" : 1400
                } ]
              } ],
              "silent" : [ "beacon", "dune-shelter" ],
              "trend" : [ {
                "run" : "2026-02-01-89abcdef",
                "asOf" : "2026-02-01",
                "animals" : 2981,
                "followUps" : {
                  "today" : 2,
                  "this-week" : 1,
                  "this-month" : 4,
                  "when-possible" : 0
                },
                "opened" : 7,
                "closed" : {
                  "dune-shelter" : 2
                }
              }, {
                "run" : "2026-03-01-0123abcd",
                "asOf" : "2026-03-01",
                "animals" : 2993,
                "followUps" : {
                  "today" : 1,
                  "this-week" : 3,
                  "this-month" : 3,
                  "when-possible" : 1
                },
                "opened" : 5,
                "closed" : {
                  "harbour-vets" : 1
                }
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
