package withers.install;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** How a process ended, and what it wrote. */
record Run(int code, String out, String err) {
  private static final int LONGEST_SECONDS = 120;

  /** Runs it to its end, with nothing to read. */
  static Run of(ProcessBuilder command) throws IOException, InterruptedException {
    Path out = Files.createTempFile("out", "");
    Path err = Files.createTempFile("err", "");
    try {
      Process process = command.redirectOutput(out.toFile()).redirectError(err.toFile()).start();
      process.getOutputStream().close();
      if (!process.waitFor(LONGEST_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new IOException("Expected " + command.command() + " to end, but it still runs");
      }
      return new Run(
          process.exitValue(), Files.readString(out, UTF_8), Files.readString(err, UTF_8));
    } finally {
      Files.delete(out);
      Files.delete(err);
    }
  }
}
