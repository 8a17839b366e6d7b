package withers.ingest.fuzz;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import withers.ingest.profile.SourceProfile;

/**
 * The whole way of up to three exports of one source, a month each: in the input they stand one
 * after another, with a line {@code ===} between them.
 */
public final class ImportTarget {

  private static final String BETWEEN = "\n===\n";
  private static final int MOST = 3;

  private ImportTarget() {}

  /** Called by the fuzzer, and with each file that is kept. */
  public static void fuzzerTestOneInput(byte[] input) {
    // Every byte is one character here, and the same byte again in the file.
    String text = new String(input, StandardCharsets.ISO_8859_1);
    List<String> exports = exports(text);
    SourceProfile profile = Harbour.profileFor(text);
    Law.require(
        told(exports, profile, input).equals(told(exports, profile, input)),
        "what is imported twice is imported the same");
  }

  private static List<String> exports(String text) {
    return List.of(text.split(BETWEEN, MOST));
  }

  private static String told(List<String> exports, SourceProfile profile, byte[] input) {
    try (Scratch scratch = new Scratch()) {
      Imports imports = new Imports(scratch.folder("quarantine"), profile, input);
      List<String> told = new ArrayList<>();
      for (int i = 0; i < exports.size(); i++) {
        byte[] bytes = exports.get(i).getBytes(StandardCharsets.ISO_8859_1);
        Path file = scratch.file("input-2031-0%d-28.csv".formatted(i + 1), bytes);
        told.add(imports.take(file));
        imports.requireNothingNew(file);
      }
      return told + imports.inEffect();
    }
  }
}
