package withers.report;

import static withers.report.Coast.BEACON;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.SHELTER;
import static withers.report.Coast.TIDELINE;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.contact.Contact;
import withers.fact.Species;
import withers.finding.Band;
import withers.finding.Evidence.Part;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.finding.OpenQuestion;
import withers.finding.RunResult;
import withers.finding.Who;
import withers.id.RecordKey;
import withers.report.list.FollowUpList;
import withers.report.list.FollowUpLists;
import withers.report.overview.Overview;
import withers.report.overview.Overviews;
import withers.report.overview.RunFigures;
import withers.report.text.Texts;

/** One run with findings of several kinds, for tests of what is made from it. */
public final class Samples {
  public final Coast coast;

  public Samples() {
    this(new Coast());
  }

  public Samples(Coast coast) {
    this.coast = coast;
  }

  public static final Contact MARA =
      new Contact(
          "Mara Linden",
          "",
          "",
          List.of("+1 212 555 0151", "(212) 555-0152"),
          List.of("mara.linden@example.org"),
          List.of("3 Quay Steps"),
          "10001",
          "Saltmouth",
          "",
          "");

  /** The run: most findings are the clinic's, one is the shelter's. */
  public RunResult run() {
    Who mara = coast.person(CLINIC, MARA);
    Who jonas = coast.person(TIDELINE, Coast.contact("Jonas Abel", "+1 212 555 0161"));
    Who adopter = coast.person(SHELTER, Coast.contact("Ida Thorne", "+1 212 555 0171"));
    RunResult run =
        Coast.run(
            FindingStory.of(FindingKind.FOUND_WAITING, CLINIC, 1001)
                .named("Biscuit")
                .band(Band.TODAY)
                .with(adopter)
                .registered(TIDELINE, jonas)
                .because(Part.WENT_TO, "2025-06-01", SHELTER, "A-204", adopter)
                .because(Part.REGISTERED_TO, "2025-06-20", TIDELINE, "T-9", jonas)
                .because(Part.FOUND, "2026-02-27", CLINIC, "P-17", new Who.Organisation(CLINIC)),
            FindingStory.of(FindingKind.CHIPS_DIVERGE, CLINIC, 1002)
                .alsoCarrying(1102)
                .record("P-18")
                .with(mara)
                .registered(0, TIDELINE, jonas)
                .registered(1, BEACON, new Who.Organisation(SHELTER)),
            FindingStory.of(FindingKind.CONTACT_BEHIND, CLINIC, 1003)
                .named("Nuk")
                .record("P-19")
                .with(mara)
                .inferred()
                .registered(TIDELINE, jonas)
                .because(Part.SEEN_WITH, "2025-10-02", CLINIC, "P-19", mara)
                .because(Part.REGISTERED_TO, "2022-05-01", TIDELINE, "T-10", jonas),
            FindingStory.of(FindingKind.RECORDS_BEHIND, CLINIC, 1004)
                .named("Olive")
                .record("P-20")
                .band(Band.THIS_MONTH)
                .with(mara)
                .registered(TIDELINE, jonas),
            FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 1005)
                .named("Pip")
                .record("P-21")
                .band(Band.THIS_MONTH)
                .with(mara),
            FindingStory.of(FindingKind.DETAILS_DIFFER, CLINIC, 1006)
                .named("Wren")
                .record("P-22")
                .band(Band.WHEN_POSSIBLE)
                .with(mara)
                .registered(TIDELINE, coast.person(TIDELINE, Coast.contact("Mara Linden", "1")))
                .differing("phone", "address"),
            FindingStory.damaged(CLINIC, "9.99E+14")
                .named("Moss")
                .record("P-23")
                .surviving("999", 1234, 1001, 1002, 1003),
            FindingStory.of(FindingKind.CONTACT_BEHIND, SHELTER, 1007)
                .named("Tarn")
                .record("A-300")
                .with(adopter)
                .registered(TIDELINE, new Who.Organisation(SHELTER)));
    return withEarlier(run);
  }

  private RunResult withEarlier(RunResult run) {
    List<CaseKey> all = run.opened();
    CaseKey unjudged =
        new CaseKey("unregistered", new Anchor.Chip(Coast.chip(1500)), CLINIC, "P-50");
    CaseKey closed =
        new CaseKey("contact-behind", new Anchor.Chip(Coast.chip(1600)), CLINIC, "P-60");
    return new RunResult(
        run.id(),
        run.asOf(),
        Optional.empty(),
        run.animals(),
        run.findings(),
        run.notJudged(),
        List.of(question(1700)),
        all.subList(0, 5),
        List.of(all.get(5), all.get(6), all.get(7), unjudged),
        List.of(closed),
        run.backlogs(),
        run.aside(),
        List.of(new CaseKey("details-differ", unjudged.anchor(), unjudged.actor(), "P-31")),
        List.of());
  }

  /** Whether a chip is registered to the clinic's client is open. */
  public OpenQuestion question(int chip) {
    Who.Person initial = coast.person(TIDELINE, Coast.contact("M. Linden", "+1 212 555 0199"));
    return new OpenQuestion(
        List.of(Coast.chip(chip)),
        Species.CAT,
        Optional.of("Fern"),
        CLINIC,
        new RecordKey("P-" + chip),
        coast.person(CLINIC, MARA),
        LocalDate.of(2025, 8, 3),
        List.of(new Finding.Registration(Coast.chip(chip), TIDELINE, initial)));
  }

  /** The overview of the run, after three imports, one of which lost half its rows. */
  public Overview overview() {
    RunResult run = run();
    RunResult unjudged =
        new RunResult(
            run.id(),
            run.asOf(),
            run.knownBy(),
            run.animals(),
            run.findings(),
            List.of(
                new NotJudged(Coast.chip(1500), BEACON, NotJudged.Reason.EXPORT_TOO_OLD),
                new NotJudged(Coast.chip(1501), BEACON, NotJudged.Reason.EXPORT_TOO_OLD),
                new NotJudged(Coast.chip(1500), TIDELINE, NotJudged.Reason.ACCOUNT_SLICE_ONLY)),
            run.questions(),
            run.opened(),
            run.stillOpen(),
            run.closed(),
            run.backlogs(),
            run.aside(),
            run.settled(),
            List.of());
    return Overviews.of(
        unjudged,
        Coast.background(
            List.of(
                Imports.of(CLINIC, "2026-02-01", 0),
                Imports.of(TIDELINE, "2026-01-26", 1400, "2026-01-26"),
                Imports.of(CLINIC, "2026-02-28", 12)),
            List.of(
                new RunFigures(
                    "2026-02-01-89abcdef",
                    LocalDate.of(2026, 2, 1),
                    2981,
                    List.of(2L, 1L, 4L, 0L),
                    7,
                    List.of(new RunFigures.Closed(SHELTER, 2))))));
  }

  public List<FollowUpList> lists(Texts texts) {
    return FollowUpLists.of(run(), Coast.DIRECTORY, coast.vault, texts);
  }
}
