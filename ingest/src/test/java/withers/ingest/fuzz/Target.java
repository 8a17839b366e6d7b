package withers.ingest.fuzz;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** What is fuzzed. */
enum Target {
  TEXT(TextTarget.class, TextTarget::fuzzerTestOneInput, 4_096),
  WORKBOOK(WorkbookTarget.class, WorkbookTarget::fuzzerTestOneInput, 8_192),
  PACK(PackTarget.class, PackTarget::fuzzerTestOneInput, 4_096),
  PROFILE(ProfileTarget.class, ProfileTarget::fuzzerTestOneInput, 4_096),
  IMPORT(ImportTarget.class, ImportTarget::fuzzerTestOneInput, 2_048);

  private final Class<?> entry;
  private final Consumer<byte[]> call;
  private final int longest;

  Target(Class<?> entry, Consumer<byte[]> call, int longest) {
    this.entry = entry;
    this.call = call;
    this.longest = longest;
  }

  /** The class that the fuzzer calls. */
  Class<?> entry() {
    return entry;
  }

  /** The longest input that the fuzzer makes, in bytes. */
  int longest() {
    return longest;
  }

  void run(byte[] input) {
    call.accept(input);
  }

  /** As the command line names it. */
  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The inputs that are kept. */
  Path corpus() {
    return home().resolve("fixtures/corpus").resolve(word());
  }

  /** The project's folder, from wherever the tests run. */
  static Path home() {
    return Stream.iterate(Path.of("").toAbsolutePath(), at -> at != null, Path::getParent)
        .filter(at -> Files.isDirectory(at.resolve("fixtures")))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("Expected a folder fixtures"));
  }
}
