package withers.supply;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.custody.Cast;
import withers.fact.Species;
import withers.finding.Finding;
import withers.finding.Finding.Certainty;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.finding.RecordFindings;
import withers.finding.Stock;
import withers.finding.Who;
import withers.history.Periods;
import withers.history.Source;
import withers.id.OrganisationId;
import withers.organisation.Organisation;
import withers.organisation.OrganisationKind;
import withers.organisation.Period;
import withers.priority.Priorities;
import withers.registration.Registries;
import withers.source.SourceKind;

/**
 * The rule {@code stock-unaccounted}: goes through supplied boxes whose numbers should all have
 * been heard of by now. Known numbers are gathered in one pass, and only those that lie in such a
 * box: at most {@link #LARGEST} longs a box. Safe for several threads.
 */
public final class Stocktake {

  /** Numbers in the largest range that is a box; a larger one is somebody's whole code. */
  static final int LARGEST = 10_000;

  private final List<Supply> boxes;
  private final RangeIndex index;
  private final Cast cast;
  private final Periods periods;

  /** By the days after which a purchaser's box should be used up, or is worth a look. */
  public Stocktake(Supplies supplies, Registries registries) {
    this.cast = registries.cast();
    this.periods = registries.periods();
    this.boxes =
        supplies
            .all()
            .filter(Stocktake::isBox)
            .filter(supply -> supply.organisation().filter(o -> isUser(o, registries)).isPresent())
            .filter(this::isOld)
            .toList();
    this.index = new RangeIndex(boxes.stream().map(Supply::range).toList());
  }

  private static boolean isBox(Supply supply) {
    return supply.listed() && supply.size() <= LARGEST && supply.statedDay().isPresent();
  }

  private static boolean isUser(OrganisationId id, Registries registries) {
    return registries
        .directory()
        .find(id)
        .map(Organisation::kind)
        .filter(kind -> kind != OrganisationKind.REGISTRY)
        .isPresent();
  }

  private boolean isOld(Supply box) {
    return !due(box).isAfter(cast.sources().scope().asOf());
  }

  /** The day from which on its numbers should have been heard of. */
  private LocalDate due(Supply box) {
    return box.day().plusDays(periods.days(Period.STOCK, box.organisation().orElseThrow()));
  }

  /** Gathers numbers that are known, or were, for one thread. */
  public final class Part {
    private final LongStream.Builder known = LongStream.builder();
    private final List<TakenBack> takenBack = new ArrayList<>();

    public void add(ChipNumber number) {
      if (index.contains(number)) {
        known.add(number.packed());
      }
    }

    /** That all that was said of a number was taken back, at last by an export of this date. */
    public void takenBack(ChipNumber number, LocalDate on) {
      if (index.contains(number)) {
        takenBack.add(new TakenBack(number, on));
      }
    }

    /** Hands all over; the part is used up. */
    public void forEach(
        Consumer<ChipNumber> number, BiConsumer<ChipNumber, LocalDate> numberTakenBack) {
      known.build().mapToObj(ChipNumber::ofPacked).forEach(number);
      takenBack.forEach(one -> numberTakenBack.accept(one.number(), one.on()));
    }
  }

  public Part part() {
    return new Part();
  }

  /**
   * Judges the boxes.
   *
   * @param parts all numbers that are known; each is used up
   */
  public RecordFindings judge(Collection<Part> parts) {
    KnownOfBoxes known =
        new KnownOfBoxes(
            parts.stream().flatMapToLong(part -> part.known.build()),
            parts.stream().flatMap(part -> part.takenBack.stream()));
    Judging judging = new Judging(known);
    boxes.forEach(judging::judge);
    return new RecordFindings(judging.findings, judging.undecided, judging.notJudged, List.of());
  }

  private final class Judging {
    private final KnownOfBoxes known;
    private final List<Finding> findings = new ArrayList<>();
    private final Set<CaseKey> undecided = new HashSet<>();
    private final Set<NotJudged> notJudged = new HashSet<>();

    Judging(KnownOfBoxes known) {
      this.known = known;
    }

    void judge(Supply box) {
      long unaccounted = box.size() - known.count(box.range());
      if (unaccounted > 0) {
        judge(box, new Stock(box.range(), known.firstMissing(box.range()), unaccounted));
      }
    }

    private void judge(Supply box, Stock stock) {
      Set<NotJudged> lacking = lacking(box);
      Finding finding = finding(box, stock);
      if (lacking.isEmpty()) {
        findings.add(finding);
      } else {
        undecided.add(finding.caseKey());
        notJudged.addAll(lacking);
      }
    }

    private Set<NotJudged> lacking(Supply box) {
      LocalDate due = due(box);
      Set<NotJudged> lacking = new HashSet<>();
      ownRecords(box, due).ifPresent(lacking::add);
      LocalDate lastNews =
          Stream.concat(known.takenBack(box.range()), Stream.of(box.firstStated()))
              .max(LocalDate::compareTo)
              .orElseThrow();
      unheard(due, lastNews)
          .map(source -> lack(box, source.organisation(), NotJudged.Reason.EXPORT_TOO_OLD))
          .forEach(lacking::add);
      return lacking;
    }
  }

  private Optional<NotJudged> ownRecords(Supply box, LocalDate due) {
    OrganisationId purchaser = box.organisation().orElseThrow();
    return new OwnRecords(cast.sources())
        .lacking(purchaser, due)
        .map(reason -> lack(box, purchaser, reason));
  }

  private static NotJudged lack(Supply box, OrganisationId whose, NotJudged.Reason reason) {
    return new NotJudged(box.range().first(), whose, reason);
  }

  /** Any source may have the last number, but one that sends supplies. */
  private Stream<Source> unheard(LocalDate due, LocalDate lastNews) {
    LocalDate near = lastNews.minusDays(Registries.DAYS_APART);
    return cast.sources().all().stream()
        .filter(cast.sources()::isWaitedFor)
        .filter(source -> source.description().kind() != SourceKind.CHIP_SUPPLY)
        .filter(source -> source.newest().isBefore(due) || source.newest().isBefore(near));
  }

  private Finding finding(Supply box, Stock stock) {
    return new Finding(
        FindingKind.STOCK_UNACCOUNTED,
        new Anchor.Source(box.source()),
        List.of(),
        Species.UNSTATED,
        Optional.empty(),
        box.organisation().orElseThrow(),
        Optional.of(box.key()),
        new Who.Nobody(),
        List.of(),
        List.of(),
        Certainty.STATED,
        Priorities.ofStock(),
        List.of(box.evidence(box.range().first(), cast)),
        Optional.of(stock));
  }
}
