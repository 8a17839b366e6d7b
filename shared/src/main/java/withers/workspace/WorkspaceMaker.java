package withers.workspace;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withers.yaml.ConfigException;
import withers.yaml.ConfigProblem;
import withers.yaml.Place;

/** Makes the folders and first files of a workspace. */
final class WorkspaceMaker {
  private static final Pattern WORD = Pattern.compile("\\{([a-z-]+)\\}");

  private final WorkspacePaths paths;
  private final Map<String, String> words;
  private final List<String> made = new ArrayList<>();

  WorkspaceMaker(WorkspacePaths paths, NewWorkspace answers) {
    this.paths = paths;
    this.words = new FirstTexts(answers).byWord();
  }

  List<String> make() {
    try {
      refuseOtherFolder();
      OwnerOnly.folder(paths.root());
      // The settings first: what is left of a start that was cut short is then a workspace, and can
      // be completed.
      file(paths.settings(), "withers.yaml");
      file(paths.organisations(), "organisations.yaml");
      for (Path folder : paths.folders()) {
        OwnerOnly.folder(folder);
      }
      file(paths.sources().resolve("README.md"), "sources.md");
      return made;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void refuseOtherFolder() throws IOException {
    boolean other = Files.exists(paths.root()) && !Files.exists(paths.settings());
    if (other && !isEmptyFolder()) {
      throw new ConfigException(
          new ConfigProblem(
              Place.of(paths.root().toString()),
              "",
              "Expected a new or empty folder, but found something in it",
              "nothing was changed; choose another folder"));
    }
  }

  private boolean isEmptyFolder() throws IOException {
    if (!Files.isDirectory(paths.root())) {
      return false;
    }
    try (DirectoryStream<Path> content = Files.newDirectoryStream(paths.root())) {
      return !content.iterator().hasNext();
    }
  }

  private void file(Path file, String template) throws IOException {
    if (!Files.exists(file)) {
      OwnerOnly.writeNew(file, filled(template));
      made.add(paths.shown(file));
    }
  }

  /** Each word is looked at once: what stands for one may look like another. */
  private String filled(String template) throws IOException {
    return WORD.matcher(text(template))
        .replaceAll(
            word -> Matcher.quoteReplacement(words.getOrDefault(word.group(1), word.group())));
  }

  private static String text(String template) throws IOException {
    try (InputStream in =
        Objects.requireNonNull(WorkspaceMaker.class.getResourceAsStream(template), template)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
