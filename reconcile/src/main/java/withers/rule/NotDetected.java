package withers.rule;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.fact.Fact;
import withers.fact.ScanResult;
import withers.finding.FindingKind;
import withers.history.Statement;

/** The last time that anybody scanned for one of its chips, it was not detected. */
final class NotDetected implements Rule {

  /** Days for which a scan counts (our judgement). */
  static final int DAYS = 365;

  private static final Comparator<Statement> LATEST_THEN_FIRST =
      Comparator.comparing(Statement::day).reversed().thenComparing(Statement.bySlot());

  @Override
  public FindingKind kind() {
    return FindingKind.NOT_DETECTED;
  }

  @Override
  public Judgement judge(Dossier dossier) {
    LocalDate from = dossier.asOf().minusDays(DAYS);
    return dossier.animal().chips().stream()
        .flatMap(chip -> newestOf(chip, dossier).stream())
        .filter(scan -> !scan.day().isBefore(from))
        .min(LATEST_THEN_FIRST)
        .<Judgement>map(Judgement.Holds::new)
        .orElse(Judgement.CLEAR);
  }

  /** A chip's first scan of the newest day, when none of that day read it. */
  private static Optional<Statement> newestOf(ChipNumber chip, Dossier dossier) {
    List<Statement> scans =
        dossier
            .animal()
            .stating(Fact.Scanned.class)
            .filter(scan -> scan.chip().equals(chip))
            .sorted(LATEST_THEN_FIRST)
            .toList();
    Stream<Statement> ofNewestDay =
        scans.stream().filter(scan -> scan.day().equals(scans.get(0).day()));
    return ofNewestDay.anyMatch(NotDetected::isRead)
        ? Optional.empty()
        : scans.stream().findFirst();
  }

  /** Whether a scan read the chip. */
  static boolean isRead(Statement scan) {
    return ((Fact.Scanned) scan.fact()).result() == ScanResult.READ;
  }
}
