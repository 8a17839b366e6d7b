package withers.ingest.inbox;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.ingest.receipt.FileState;

/** Files that are still being written. Nobody sleeps here: the waiting is a list. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SettlingTest {

  private static final Instant NOW = Instant.parse("2031-03-01T01:30:00Z");

  @TempDir Path folder;
  private final List<Duration> waited = new ArrayList<>();

  private Contents settle(Waiting meanwhile, InboxFile... files) {
    Waiting waiting =
        time -> {
          waited.add(time);
          meanwhile.waitFor(time);
        };
    return new Settling(Duration.ofSeconds(10), Clock.fixed(NOW, ZoneOffset.UTC), waiting)
        .settle(new Contents(List.of(files), List.of(), List.of(), List.of()));
  }

  private InboxFile file(String name, int secondsAgo) throws IOException {
    Path file = Files.writeString(folder.resolve(name), "some rows");
    Files.setLastModifiedTime(file, FileTime.from(NOW.minusSeconds(secondsAgo)));
    return new InboxFile(file, name, Optional.empty(), FileState.of(file));
  }

  private void append(String name) {
    try {
      Files.writeString(folder.resolve(name), "more rows", StandardOpenOption.APPEND);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void nothing_waits_for_files_that_were_left_alone_long_enough() throws IOException {
    InboxFile old = file("old.csv", 10);

    assertThat(settle(time -> {}, old).files()).containsExactly(old);
    assertThat(waited).isEmpty();
  }

  @Test
  void an_empty_inbox_waits_for_nothing() {
    assertThat(settle(time -> {}).files()).isEmpty();
    assertThat(waited).isEmpty();
  }

  @Test
  void the_youngest_file_is_given_the_rest_of_the_time_once_for_all() throws IOException {
    InboxFile young = file("young.csv", 3);
    InboxFile younger = file("younger.csv", 1);

    Contents settled = settle(time -> {}, young, younger);

    assertThat(settled.files()).containsExactly(young, younger);
    assertThat(settled.left()).isEmpty();
    assertThat(waited).containsExactly(Duration.ofSeconds(9));
  }

  @Test
  void a_file_that_changes_meanwhile_is_left_for_next_time() throws IOException {
    InboxFile whole = file("whole.csv", 3);
    InboxFile growing = file("growing.csv", 3);

    Contents settled = settle(time -> append("growing.csv"), whole, growing);

    assertThat(settled.files()).containsExactly(whole);
    assertThat(settled.left())
        .containsExactly(
            "Expected a file that nobody writes to, but found one that changes (growing.csv, at 01:30): it is left for"
                + " next time.");
  }

  @Test
  void a_file_that_is_taken_away_meanwhile_is_left() throws IOException {
    InboxFile file = file("gone.csv", 3);

    Contents settled =
        settle(
            time -> {
              try {
                Files.delete(file.path());
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            },
            file);

    assertThat(settled.files()).isEmpty();
    assertThat(settled.left()).hasSize(1);
  }

  @Test
  void a_file_dated_in_the_future_is_watched_for_the_whole_time_and_no_longer() throws IOException {
    InboxFile file = file("tomorrow.csv", -86_400);

    assertThat(settle(time -> {}, file).files()).containsExactly(file);
    assertThat(waited).containsExactly(Duration.ofSeconds(10));
  }
}
