package withers.report.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.yaml.ConfigException;
import withers.yaml.ConfigProblem;
import withers.yaml.Fields;
import withers.yaml.Place;
import withers.yaml.Problems;
import withers.yaml.YamlFiles;

/**
 * The demo's files: {@code workspace/}, {@code rounds.yaml}, and a folder of exports for each
 * round.
 */
public final class DemoFixtures {
  private static final String ROUNDS = "rounds.yaml";

  private final Path folder;

  private DemoFixtures(Path folder) {
    this.folder = folder;
  }

  /**
   * The fixtures of a project's folder.
   *
   * @throws ConfigException when nothing says where that is, or it holds no demo
   */
  public static DemoFixtures of(Home home) {
    Optional<Path> demo = home.folder().map(folder -> folder.resolve("fixtures").resolve("demo"));
    return demo.filter(Files::isDirectory)
        .map(DemoFixtures::new)
        .orElseThrow(() -> new ConfigException(missing(demo)));
  }

  private static ConfigProblem missing(Optional<Path> demo) {
    return new ConfigProblem(
        Place.of(demo.map(Path::toString).orElse("fixtures/demo")),
        "",
        "Expected the demo's files, but found none",
        "start the demo with the launcher of a whole copy of the project: ./withers demo");
  }

  /**
   * The rounds, in their order.
   *
   * @throws ConfigException with all mistakes of the file
   */
  public List<Round> rounds() {
    Problems problems = new Problems();
    List<Round> rounds =
        YamlFiles.read(folder.resolve(ROUNDS), ROUNDS, problems)
            .flatMap(file -> Fields.read(file, problems, DemoFixtures::rounds))
            .orElse(List.of());
    problems.throwIfAny();
    return rounds;
  }

  private static List<Round> rounds(Fields fields) {
    fields.require("rounds");
    return fields.maps("rounds", Round::read);
  }

  /** The files of the demo's workspace, to be copied as they stand. */
  public Path workspace() {
    return folder.resolve("workspace");
  }

  /** The exports of a round, in the order of their names. */
  public List<Path> exports(Round round) {
    try (Stream<Path> files = Files.list(folder.resolve(round.folder()))) {
      return files.filter(Files::isRegularFile).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
