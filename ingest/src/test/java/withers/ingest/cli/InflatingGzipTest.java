package withers.ingest.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A small file that unpacks to ten gigabytes, and a process with half a gigabyte of memory. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class InflatingGzipTest {

  private static final int MEMBER = 64 << 20;
  private static final int MEMBERS = 160;
  private static final Duration LONGEST = Duration.ofMinutes(1);

  @TempDir Path folder;

  @Test
  void ten_gigabytes_in_ten_megabytes_are_refused_by_a_process_of_half_a_gigabyte()
      throws IOException, InterruptedException {
    TestWorkspace workspace = TestWorkspace.create(folder).withClinic();
    Path file = folder.resolve("inbox/harbour-2031-01-31.csv.gz");
    writeTenGigabytes(file);
    assertThat(Files.size(file)).isLessThan(11_000_000);

    Process process = start(workspace, folder.resolve("said.txt"));
    boolean ended = process.waitFor(LONGEST.toMillis(), java.util.concurrent.TimeUnit.MILLISECONDS);
    process.destroyForcibly().onExit().join();

    assertThat(ended).isTrue();
    assertThat(Files.readString(folder.resolve("said.txt")))
        .isEqualTo(
            """
            withers: Expected a file that is at most 200 times as large when unpacked, but found more, as in files made to fill up a disk or a memory (harbour-2031-01-31.csv.gz): ask who sent it; if it is an export, have it sent unpacked. Nothing was changed.
            exit code 4
            """);
    assertThat(workspace.markers()).isEmpty();
  }

  /** A gzip file may consist of members (RFC 1952, 2.2), so one is packed once and repeated. */
  private static void writeTenGigabytes(Path file) throws IOException {
    ByteArrayOutputStream member = new ByteArrayOutputStream();
    byte[] zeros = new byte[1 << 20];
    try (OutputStream out = new GZIPOutputStream(member)) {
      for (int i = 0; i < MEMBER / zeros.length; i++) {
        out.write(zeros);
      }
    }
    try (OutputStream out = Files.newOutputStream(file)) {
      for (int i = 0; i < MEMBERS; i++) {
        member.writeTo(out);
      }
    }
  }

  private static Process start(TestWorkspace workspace, Path said) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xmx512m",
            "-XX:+IgnoreUnrecognizedVMOptions",
            "--enable-native-access=ALL-UNNAMED",
            "--sun-misc-unsafe-memory-access=allow",
            "-cp",
            System.getProperty("java.class.path"),
            InflatingGzipTest.class.getName(),
            workspace.root().toString())
        .redirectErrorStream(true)
        .redirectOutput(said.toFile())
        .start();
  }

  public static void main(String... args) {
    TestWorkspace.Said said = new TestWorkspace(Path.of(args[0])).ingest();
    System.out.write(said.err().getBytes(StandardCharsets.UTF_8), 0, said.err().length());
    System.out.println("exit code " + said.exitCode());
  }
}
