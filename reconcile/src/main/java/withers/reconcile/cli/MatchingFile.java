package withers.reconcile.cli;

import java.util.Optional;
import withers.matching.Matcher;
import withers.matching.Parameters;
import withers.matching.ParametersReader;
import withers.workspace.Workspace;
import withers.yaml.Problems;
import withers.yaml.YamlFiles;

/** The judge of a workspace: with its own parameters, if its settings name a file of them. */
public final class MatchingFile {
  private MatchingFile() {}

  /**
   * The workspace's judge.
   *
   * @throws withers.yaml.ConfigException when the file can't be read or has mistakes
   */
  public static Matcher matcher(Workspace workspace) {
    return workspace
        .settings()
        .matching()
        .map(name -> Matcher.of(read(workspace, name)))
        .orElseGet(Matcher::builtIn);
  }

  private static Parameters read(Workspace workspace, String name) {
    Problems problems = new Problems();
    Optional<Parameters> parameters =
        YamlFiles.read(workspace.paths().root().resolve(name), name, problems)
            .flatMap(map -> ParametersReader.read(map, problems));
    problems.throwIfAny();
    return parameters.orElseThrow();
  }
}
