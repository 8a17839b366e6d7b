package withers.report.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import picocli.CommandLine.IVersionProvider;

/** The version that the build wrote beside this class. */
final class Version implements IVersionProvider {
  @Override
  public String[] getVersion() {
    return new String[] {"Withers " + number()};
  }

  private static String number() {
    try (InputStream text =
        Objects.requireNonNull(Version.class.getResourceAsStream("version.txt"), "version.txt")) {
      return new String(text.readAllBytes(), StandardCharsets.UTF_8).strip();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
