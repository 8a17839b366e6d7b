package withers.reconcile.cli;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import withers.codec.Streams;
import withers.work.Crew;

/** Who did how much of a run, as lines of text. */
final class CrewText {
  private static final double THOUSAND = 1000;
  private static final double HUNDRED = 100;

  private CrewText() {}

  static List<String> of(Crew crew) {
    int parts = Streams.CHIPS.partitions();
    int elsewhere = crew.shares().stream().mapToInt(Crew.Share::parts).sum();
    Stream<String> here =
        elsewhere == parts
            ? Stream.empty()
            : Stream.of("%-32s %3d of %d partitions".formatted("here", parts - elsewhere, parts));
    return Stream.of(
            crew.notes().stream(), crew.shares().stream().map(one -> line(one, parts)), here)
        .flatMap(lines -> lines)
        .toList();
  }

  private static String line(Crew.Share share, int parts) {
    return String.format(
        Locale.ROOT,
        "%-32s %3d of %d partitions, %5.1f %%; %.1f s, of the processor %.1f s",
        share.worker(),
        share.parts(),
        parts,
        HUNDRED * share.parts() / parts,
        share.millis() / THOUSAND,
        share.processorMillis() / THOUSAND);
  }
}
