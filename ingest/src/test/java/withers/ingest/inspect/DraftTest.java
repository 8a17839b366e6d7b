package withers.ingest.inspect;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import withers.ingest.Inspector;
import withers.ingest.pack.PackedFile;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;

/** A draft whose questions are answered is a profile, and reads the demo as its own profiles do. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DraftTest {

  private static final Answers ANSWERS =
      new Answers(Map.of("organisation", "vendle-network", "extent", "full", "coverage", "whole"));

  @TempDir Path folder;

  static Stream<DemoExports.Export> exports() {
    return DemoExports.all().stream().filter(export -> export.file().contains("2026-08"));
  }

  @ParameterizedTest
  @MethodSource("exports")
  void of_the_demo_reads_it_as_its_profile_does(DemoExports.Export export) {
    Inspector.Options options = new Inspector.Options(Optional.empty(), ANSWERS, 0, false);
    Draft draft = new Inspector().inspect(PackedFile.plain(export.path()), options).draft();

    SourceProfile read = read(draft);

    assertThat(read.kind()).isEqualTo(export.profile().kind());
    assertThat(read.format().date()).hasToString(export.profile().format().date().toString());
    assertThat(read.recognises(export.file())).isTrue();
    assertThat(named(read)).isEqualTo(named(export.profile()));
  }

  /** Takes the open questions out, as somebody does who has answered them. */
  private SourceProfile read(Draft draft) {
    String text = draft.text();
    int questions = text.indexOf("\nopen-questions:");
    write("proposed.yaml", questions < 0 ? text : text.substring(0, questions + 1));
    return Profiles.read(folder, DemoExports.directory()).all().get(0);
  }

  private void write(String name, String text) {
    try {
      Files.writeString(folder.resolve(name), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Map<String, Set<String>> named(SourceProfile profile) {
    Map<String, Set<String>> named = new TreeMap<>();
    Truth.of(profile)
        .forEach(
            (path, headers) -> {
              Set<String> small = new TreeSet<>();
              headers.forEach(header -> small.add(header.toLowerCase(Locale.ROOT)));
              named.put(path, small);
            });
    named.remove("animal-id", Set.copyOf(named.getOrDefault("key", Set.of())));
    return named;
  }
}
