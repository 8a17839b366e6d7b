package withers.ingest.fuzz;

import java.nio.file.Path;
import java.time.LocalDate;
import withers.ingest.TestDirectory;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;
import withers.yaml.ConfigException;

/** A source profile: loaded, and asked what it is asked of before a file is read. */
public final class ProfileTarget {

  private static final int LONGEST_LINE = 2_000;
  private static final LocalDate DATE = LocalDate.of(2031, 1, 31);

  private ProfileTarget() {}

  /** Called by the fuzzer, and with each file that is kept. */
  public static void fuzzerTestOneInput(byte[] input) {
    try (Scratch scratch = new Scratch()) {
      scratch.file("sources/input.yaml", input);
      Path sources = scratch.folder("sources");
      String once = read(sources);
      Law.require(once.equals(read(sources)), "what is read twice is read the same");
    }
  }

  private static String read(Path sources) {
    try {
      SourceProfile profile = Profiles.read(sources, TestDirectory.HARBOUR_CLINIC).all().get(0);
      return profile.headers()
          + " "
          + profile.recognises("input-2031-01-31.csv")
          + " "
          + profile.describe(DATE)
          + " "
          + profile.format().date().read("31/01/2031")
          + " "
          + profile.format().text()
          + " "
          + profile.digest();
    } catch (ConfigException refused) {
      String message = String.valueOf(refused.getMessage());
      Law.require(!message.isBlank(), "a refusal says what is wrong");
      Law.require(
          message.lines().allMatch(line -> line.length() <= LONGEST_LINE), "a refusal is short");
      return message;
    }
  }
}
