package withers.explain;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.custody.Cast;
import withers.custody.Discretion;
import withers.explain.Explanation.Part;
import withers.finding.Evidence;
import withers.finding.Finding;
import withers.finding.Priority;
import withers.finding.RunResult;
import withers.history.Periods;
import withers.history.Scope;
import withers.history.Sources;
import withers.id.OrganisationId;
import withers.log.LogSnapshot;
import withers.organisation.Directory;
import withers.registration.Registries;
import withers.rule.Dossier;
import withers.rule.HeldBack;
import withers.run.AnimalReader;
import withers.run.DiscretionReader;
import withers.run.SettlementReader;
import withers.settled.Settlements;
import withers.supply.Supplies;

/** Explains follow-ups of a run, from the run and from the log as it is now. */
public final class Explainer {

  private static final int MILLIONTHS = 6;

  private final RunResult run;
  private final LogSnapshot log;
  private final Sources sources;
  private final Settlements settlements;
  private final Registries registries;
  private final Naming naming;
  private final RuleSentences sentences = RuleSentences.read();

  /**
   * @param periods as for the run
   * @param reader whose clients may be named; empty for nobody's
   * @param names finds a person's name in the vault
   */
  public Explainer(
      RunResult run,
      LogSnapshot log,
      Directory directory,
      withers.contacts.People people,
      Periods periods,
      Optional<OrganisationId> reader,
      Function<ContactRef, Optional<String>> names) {
    this.run = run;
    this.log = log;
    this.sources = Sources.of(log.markers(), new Scope(run.asOf(), run.knownBy()));
    this.settlements = SettlementReader.read(log, new Scope(run.asOf(), run.knownBy()));
    this.registries =
        new Registries(
            directory, new Cast(people, sources, settlements, DiscretionReader.read(log)), periods);
    this.naming = new Naming(directory, reader, names);
  }

  /** Explains a follow-up that the run tells of. */
  public Explanation explain(CaseKey key) {
    CaseState state = new CaseState(run, key, naming);
    List<Part> parts = new ArrayList<>();
    parts.add(
        new Part(
            "The rule",
            List.of(sentences.of(key.rule()).orElse("There is no sentence of this kind."))));
    state.finding().ifPresent(finding -> parts.addAll(rests(finding)));
    Optional<Dossier> dossier =
        key.anchor() instanceof Anchor.Chip chip
            ? Optional.of(dossier(chip.number()))
            : Optional.empty();
    dossier.map(one -> records(one, state.finding())).ifPresent(parts::addAll);
    parts.add(new Part("What people settled", new SettledLines(settlements).of(key, dossier)));
    parts.add(new Part("Its life so far", new Story(log).of(names(key, state))));
    state.finding().ifPresent(finding -> parts.add(priority(finding.priority())));
    parts.add(new Part("What would close it", List.of(Closing.of(key.rule()))));
    parts.add(new Part("What hides it", state.hiding()));
    return new Explanation(title(key, state), parts);
  }

  /** Whether nothing is told of a follow-up, because its animal is marked as confidential. */
  public boolean isSilent(CaseKey key) {
    Discretion discretion = registries.cast().discretion();
    return discretion.covers(key)
        || !discretion.isNone()
            && key.anchor() instanceof Anchor.Chip chip
            && discretion.covers(new AnimalReader(log, sources, settlements).read(chip.number()));
  }

  private static List<CaseKey> names(CaseKey key, CaseState state) {
    return state.finding().map(HeldBack::names).orElseGet(() -> Stream.of(key)).toList();
  }

  private Dossier dossier(ChipNumber number) {
    return Dossier.of(
        new AnimalReader(log, sources, settlements).read(number),
        registries,
        Supplies.read(log, registries.cast()));
  }

  private String title(CaseKey key, CaseState state) {
    String record = key.recordKey().isEmpty() ? "" : ", by its record " + key.recordKey();
    return "%s of %s: %s acts%s; %s (run %s, as of %s)"
        .formatted(
            key.rule(),
            key.anchor().display(),
            naming.of(key.actor()),
            record,
            state.state(),
            run.id(),
            run.asOf());
  }

  private List<Part> rests(Finding finding) {
    List<String> lines = new ArrayList<>(finding.evidence().stream().map(this::line).toList());
    finding
        .damage()
        .filter(damage -> naming.isFor(finding.actor()))
        .map(damage -> "the number is written \"%s\"".formatted(damage.written()))
        .ifPresent(lines::add);
    return List.of(new Part("What it rests on", lines));
  }

  private String line(Evidence evidence) {
    String place = naming.isFor(evidence.saidBy()) ? ", " + evidence.where() : "";
    return "%s %s: %s, chip %s [%s, record %s, first stated %s%s]"
        .formatted(
            evidence.day(),
            evidence.part().name().toLowerCase(Locale.ROOT).replace('_', ' '),
            naming.of(evidence.who()),
            evidence.chip().display(),
            naming.of(evidence.saidBy()),
            evidence.key(),
            evidence.firstStated(),
            place);
  }

  private List<Part> records(Dossier dossier, Optional<Finding> finding) {
    return List.of(
        new Part(
            "The trail, and how it is read",
            new TrailLines(dossier.custody(), dossier.deaths(), naming).lines()),
        new Part(
            "How contacts compare",
            new ContactLines(dossier, strays(dossier, finding), naming).lines()));
  }

  /** Whom registrations of other numbers name that a finding speaks of. */
  private static List<Finding.Registration> strays(Dossier dossier, Optional<Finding> finding) {
    return finding.stream()
        .flatMap(found -> found.registered().stream())
        .filter(registration -> !dossier.animal().chips().contains(registration.chip()))
        .toList();
  }

  private static Part priority(Priority priority) {
    String product =
        priority.arithmetic().stream()
            .map(factor -> "%s %s".formatted(factor.name(), decimal(factor.millionths())))
            .collect(Collectors.joining(" x "));
    return new Part(
        "Its priority",
        List.of(
            "band " + priority.band().word(),
            "%s = expected harm %s".formatted(product, decimal(priority.harm()))));
  }

  private static String decimal(long millionths) {
    BigDecimal value = BigDecimal.valueOf(millionths, MILLIONTHS).stripTrailingZeros();
    return value.toPlainString();
  }
}
