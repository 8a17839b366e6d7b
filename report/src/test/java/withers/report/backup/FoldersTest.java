package withers.report.backup;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FoldersTest {

  /** Files that come and go: so many that some are gone when they are looked at. */
  private static final int PASSING = 200;

  private static final int ROUNDS = 50;

  @TempDir private Path temp;

  @Test
  void files_that_go_while_a_folder_is_copied_are_left_out() throws IOException {
    Path from = Files.createDirectory(temp.resolve("from"));
    Path busy = Files.createDirectory(from.resolve("busy"));
    Files.writeString(from.resolve("stays"), "as before");
    AtomicBoolean isOver = new AtomicBoolean();
    CompletableFuture<Void> others = CompletableFuture.runAsync(() -> comeAndGo(busy, isOver));
    try {
      for (int round = 0; round < ROUNDS; round++) {
        Path to = temp.resolve("to-" + round);
        Folders.copy(from, to, place -> true);
        assertThat(to.resolve("stays")).hasContent("as before");
      }
    } finally {
      isOver.set(true);
      others.join();
    }
  }

  private static void comeAndGo(Path folder, AtomicBoolean isOver) {
    try {
      while (!isOver.get()) {
        List<Path> passing = new ArrayList<>();
        for (int i = 0; i < PASSING; i++) {
          passing.add(Files.createTempFile(folder, "passing", ""));
        }
        for (Path one : passing) {
          Files.delete(one);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
