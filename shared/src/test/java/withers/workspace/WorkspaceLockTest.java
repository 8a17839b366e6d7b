package withers.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Timeout(60)
class WorkspaceLockTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2031-03-01T12:00:05.678Z"), ZoneOffset.UTC);

  @TempDir private Path folder;
  private Workspace workspace;

  @BeforeEach
  void make() {
    Workspace.create(
        folder,
        new NewWorkspace("Coast", ZoneId.of("Europe/Helsinki"), "ZZ", "en", TestNumbers.REFUSED));
    workspace = Workspace.open(folder, CLOCK);
  }

  @Test
  void another_process_is_refused_and_told_who_holds_it() throws Exception {
    try (LockingProcess other = LockingProcess.start(folder)) {
      assertThat(other.says()).isEqualTo("held");

      assertThatThrownBy(() -> workspace.lock("run"))
          .isInstanceOf(WorkspaceBusyException.class)
          .hasMessage(
              "Expected a free workspace, but found it in use by process %d on %s, running \"ingest\""
                  + " since 2031-03-01T03:30:00+02:00 (%s): wait for it to end, then repeat",
              other.pid(), InetAddress.getLocalHost().getHostName(), folder);
    }
  }

  @Test
  void a_lock_that_is_given_back_is_free() throws Exception {
    try (LockingProcess other = LockingProcess.start(folder)) {
      assertThat(other.says()).isEqualTo("held");
      other.mayEnd();

      workspace.lock("run").close();
      workspace.lock("run").close();
    }
  }

  @Test
  void a_process_that_dies_gives_its_lock_back() throws Exception {
    try (LockingProcess other = LockingProcess.start(folder)) {
      assertThat(other.says()).isEqualTo("held");
      other.kill();

      try (WorkspaceLock lock = workspace.lock("run")) {
        assertThat(lock.isHeld()).isTrue();
        assertThat(Files.readString(folder.resolve("log/workspace.lock.holder")))
            .contains("process " + ProcessHandle.current().pid())
            .endsWith("running \"run\" since 2031-03-01T14:00:05+02:00");
      }
    }
  }

  @Test
  void a_second_attempt_in_one_process_is_refused_and_does_not_loosen_the_lock() throws Exception {
    try (WorkspaceLock lock = workspace.lock("run")) {
      assertThat(lock.isHeld()).isTrue();
      assertThatThrownBy(() -> workspace.lock("ingest"))
          .isInstanceOf(WorkspaceBusyException.class)
          .hasMessageContaining("running \"run\"");

      try (LockingProcess other = LockingProcess.start(folder)) {
        assertThat(other.says()).isEqualTo("refused");
      }
    }
  }

  @Test
  void a_lock_can_be_closed_twice() {
    WorkspaceLock first = workspace.lock("run");
    first.close();
    try (WorkspaceLock second = workspace.lock("run")) {
      first.close();

      assertThat(second.isHeld()).isTrue();
      assertThatThrownBy(() -> workspace.lock("ingest")).isInstanceOf(WorkspaceBusyException.class);
    }
  }

  @Test
  void taking_the_lock_makes_folders_that_are_missing() throws IOException {
    Files.delete(folder.resolve("outbox"));

    workspace.lock("run").close();

    assertThat(folder.resolve("outbox")).isDirectory();
  }

  @Test
  void lock_files_are_their_owners_only() throws IOException {
    String permissions =
        workspace.whileLocked(
            "run",
            () ->
                permissions("log/workspace.lock") + " " + permissions("log/workspace.lock.holder"));

    assertThat(permissions).isEqualTo("rw------- rw-------");
  }

  @Test
  void work_that_fails_gives_the_lock_back() {
    assertThatThrownBy(
            () ->
                workspace.whileLocked(
                    "run",
                    () -> {
                      throw new IOException("the disk is full");
                    }))
        .isInstanceOf(IOException.class);

    workspace.lock("run").close();
  }

  private String permissions(String file) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve(file)));
  }
}
