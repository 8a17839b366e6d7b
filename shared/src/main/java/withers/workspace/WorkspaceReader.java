package withers.workspace;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.point.Points;
import withers.yaml.Fields;
import withers.yaml.Problems;
import withers.yaml.YamlFiles;
import withers.yaml.YamlMap;

/** Reads the two files of a workspace once: their mistakes are told together. */
final class WorkspaceReader {
  private final WorkspacePaths paths;
  private final Problems problems = new Problems();
  private final DirectoryReader directoryReader = new DirectoryReader(problems);

  WorkspaceReader(WorkspacePaths paths) {
    this.paths = paths;
  }

  Workspace read(Clock clock, Points points, Overrides overrides, BeforeUpgrade beforeUpgrade) {
    Optional<YamlMap> settingsFile =
        YamlFiles.read(paths.settings(), WorkspacePaths.SETTINGS, problems);
    Optional<YamlMap> directoryFile =
        YamlFiles.read(paths.organisations(), WorkspacePaths.ORGANISATIONS, problems);
    List<Organisation> organisations = directoryFile.map(directoryReader::read).orElse(List.of());
    SettingsReader reader = new SettingsReader(knownIds(), regions(organisations));
    Optional<Settings> settings =
        settingsFile.flatMap(file -> Fields.read(overrides.over(file), problems, reader::read));
    problems.throwIfAny();
    return new Workspace(
        paths,
        settings.orElseThrow(),
        Directory.of(organisations),
        clock,
        points,
        overrides,
        beforeUpgrade);
  }

  /** Empty when a mistake may have kept the directory from stating one. */
  private Optional<Set<String>> regions(List<Organisation> organisations) {
    return Optional.of(
            organisations.stream()
                .map(organisation -> organisation.contact().region())
                .filter(region -> !region.isEmpty())
                .collect(Collectors.toSet()))
        .filter(known -> problems.isEmpty());
  }

  /**
   * Empty when a mistake kept the directory from stating any: then no reference to it can be
   * judged.
   */
  private Optional<Set<OrganisationId>> knownIds() {
    return Optional.of(directoryReader.ids()).filter(ids -> !ids.isEmpty() || problems.isEmpty());
  }
}
