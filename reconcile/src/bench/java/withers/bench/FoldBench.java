package withers.bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;
import withers.codec.Streams;
import withers.history.Fold;
import withers.history.Folded;
import withers.history.Sources;
import withers.history.Stated;
import withers.log.LogSnapshot;
import withers.world.World;

/**
 * Folding what was said of one chip, given in any order. Settles whether the folded histories of
 * chips are worth keeping: set beside decoding as many statements ({@link ChunkBench}), which a
 * kept one would spare too, and beside judging the animal.
 */
public class FoldBench extends AverageOfOne {
  private static final LocalDate AS_OF = LocalDate.of(2026, 10, 1);
  private static final long SEED = 20260901;

  /** Visits beside an implant and a registration. */
  @Param({"0", "5", "50"})
  public int visits;

  private List<Stated> stated = List.of();
  private Fold fold = new Fold(Sources.of(List.of(), withers.history.Scope.asOf(AS_OF)));

  @Setup
  public void make() {
    LogSnapshot log = World.of(lines()).log().snapshot();
    fold = new Fold(Sources.of(log.markers(), withers.history.Scope.asOf(AS_OF)));
    stated = new ArrayList<>();
    for (int partition = 0; partition < Streams.CHIPS.partitions(); partition++) {
      log.replay(
          Streams.CHIPS, partition, (event, marker) -> stated.add(new Stated(event, marker)));
    }
    Collections.shuffle(stated, new Random(SEED));
  }

  private String lines() {
    StringBuilder lines =
        new StringBuilder(
            """
            clinic 2026-08-31 C1 p1 implanted 2024-01-01 own
            north 2026-08-31 C1 n1 registered 2024-01-05 Ada
            """);
    for (int visit = 0; visit < visits; visit++) {
      LocalDate day = AS_OF.minusDays(60 + 7L * visit);
      lines.append("clinic 2026-08-31 C1 p%d visit %s Ada%n".formatted(visit, day));
    }
    return lines.toString();
  }

  @Benchmark
  public Folded fold() {
    return fold.fold(stated);
  }
}
