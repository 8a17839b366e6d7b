package withers.report.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import withers.workspace.OwnerOnly;
import withers.workspace.WorkspacePaths;
import withers.yaml.ConfigException;
import withers.yaml.ConfigProblem;
import withers.yaml.Place;

/** The folder that the demo plays in. A mark in it says that the demo made it and may empty it. */
public final class DemoFolder {
  private static final String MARK = ".withers-demo";

  private final Path folder;

  private DemoFolder(Path folder) {
    this.folder = folder;
  }

  /**
   * Makes the folder, or empties the one that an earlier demo made, and copies files into it.
   *
   * @param workspace the files to begin with
   * @throws ConfigException when the folder holds something that no demo made
   */
  public static DemoFolder fresh(Path folder, Path workspace) {
    DemoFolder demo = new DemoFolder(folder.toAbsolutePath().normalize());
    try {
      demo.makeEmpty();
      demo.copyAll(workspace);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return demo;
  }

  private void makeEmpty() throws IOException {
    OwnerOnly.folder(folder);
    List<Path> found = inside();
    if (!found.isEmpty() && !Files.exists(folder.resolve(MARK))) {
      throw new ConfigException(notOurs());
    }
    for (Path path : found) {
      Files.delete(path);
    }
    OwnerOnly.writeNew(folder.resolve(MARK), "Made by \"withers demo\", which may empty it.\n");
  }

  private ConfigProblem notOurs() {
    return new ConfigProblem(
        Place.of(folder.toString()),
        "",
        "Expected a folder that is new, empty or made by the demo, but found other files",
        "name another with --workspace DIR");
  }

  /** All that is in the folder, each thing after what it holds; links are not followed. */
  private List<Path> inside() throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(path -> !path.equals(folder)).sorted(Comparator.reverseOrder()).toList();
    }
  }

  private void copyAll(Path source) throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.walk(source)) {
      files = all.filter(Files::isRegularFile).sorted().toList();
    }
    for (Path file : files) {
      copy(file, folder.resolve(source.relativize(file).toString()));
    }
  }

  /** Has the events go to Kafka. */
  public void keepLogOn(KafkaOfDemo kafka) {
    Path settings = new WorkspacePaths(folder).settings();
    try {
      String stated = Files.readString(settings) + kafka.settings();
      OwnerOnly.replace(settings, stated.getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Puts exports into the workspace's inbox. */
  public void receive(List<Path> exports) {
    try {
      for (Path export : exports) {
        copy(export, folder.resolve("inbox").resolve(export.getFileName().toString()));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    Path parent = to.getParent();
    if (parent != null) {
      OwnerOnly.folder(parent);
    }
    OwnerOnly.replace(to, Files.readAllBytes(from));
  }

  public Path path() {
    return folder;
  }
}
