package withers.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.finding.Finding;
import withers.law.Desk;

/**
 * Findings against what is true. {@code -Dtruth.worlds=50} asks for more worlds, {@code
 * -Dtruth.animals=5000} for larger ones; what they last said stands in docs/findings.md.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class TruthTest {

  private static final int WORLDS = Integer.getInteger("truth.worlds", 1);
  private static final int ANIMALS = Integer.getInteger("truth.animals", 5000);
  private static final double PRECISION = 0.95;
  private static final double RECALL = 0.98;

  @TempDir private Path folder;

  @Test
  void what_is_urgent_is_right_and_what_was_knowable_is_found() throws IOException {
    Score score = new Score();
    for (long seed = 1; seed <= WORLDS; seed++) {
      Path world = folder.resolve("world-" + seed);
      Map<String, Truth> truths = TrueWorld.write(seed, ANIMALS, world);
      score.add(truths, byChip(judged(world)), seed);
    }
    if (WORLDS > 1) {
      System.out.println(score.table());
    }
    assertThat(score.precision()).as(score.table()).isGreaterThanOrEqualTo(PRECISION);
    assertThat(score.recall()).as(score.table()).isGreaterThanOrEqualTo(RECALL);
  }

  private static Map<String, Finding> byChip(List<Finding> findings) {
    Map<String, Finding> byChip = new HashMap<>();
    for (Finding finding : findings) {
      if (finding.damage().isEmpty()) {
        finding.chips().forEach(chip -> byChip.put(chip.display(), finding));
      }
    }
    return byChip;
  }

  private static List<Finding> judged(Path world) throws IOException {
    Path workspace = world.resolve("workspace");
    for (Path profile : files(workspace.resolve("sources"))) {
      Files.writeString(
          profile, "\nlimits: {rejects: 100 %, floor: 0}\n", StandardOpenOption.APPEND);
    }
    Desk desk = new Desk(workspace);
    for (Round round : Round.ALL) {
      files(world.resolve(round.folder())).forEach(file -> desk.take(List.of(file)));
    }
    return desk.outcome(Round.last().asOf(), 2).findings();
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }
}
