package withers.ingest.profile;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.id.SourceId;
import withers.organisation.Directory;
import withers.source.OwnSources;
import withers.yaml.ConfigException;
import withers.yaml.Fields;
import withers.yaml.Place;
import withers.yaml.Problems;
import withers.yaml.YamlFiles;

/** The source profiles of a workspace, in the order of their ids. Immutable. */
public record Profiles(List<SourceProfile> all) {

  private static final String SUFFIX = ".yaml";

  public Profiles {
    all = List.copyOf(all);
  }

  /**
   * Reads every profile in a folder; a file's name without {@code .yaml} is the source's id.
   *
   * @throws ConfigException with all mistakes of all profiles
   */
  public static Profiles read(Path folder, Directory directory) {
    Problems problems = new Problems();
    List<SourceProfile> read =
        files(folder).stream().flatMap(file -> read(file, directory, problems).stream()).toList();
    problems.throwIfAny();
    return new Profiles(read);
  }

  private static List<Path> files(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(SUFFIX)).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Optional<SourceProfile> read(Path file, Directory directory, Problems problems) {
    String name = file.getFileName().toString();
    String shown = "sources/" + name;
    return sourceId(name, shown, problems)
        .flatMap(
            id ->
                YamlFiles.read(file, shown, problems)
                    .flatMap(
                        map ->
                            Fields.read(
                                map,
                                problems,
                                fields ->
                                    new ProfileReader(problems, directory)
                                        .read(id, digest(file), fields))));
  }

  private static Optional<SourceId> sourceId(String name, String shown, Problems problems) {
    String id = name.substring(0, name.length() - SUFFIX.length());
    try {
      return Optional.of(free(new SourceId(id)));
    } catch (IllegalArgumentException refused) {
      problems.add(Place.of(shown), "", String.valueOf(refused.getMessage()), "rename the file");
      return Optional.empty();
    }
  }

  private static SourceId free(SourceId id) {
    if (OwnSources.isTaken(id)) {
      throw new IllegalArgumentException(
          "Expected another name than \"%s\": Withers writes under it itself".formatted(id));
    }
    return id;
  }

  private static String digest(Path file) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(sha.digest(Files.readAllBytes(file)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }

  public Optional<SourceProfile> find(SourceId id) {
    return all.stream().filter(profile -> profile.id().equals(id)).findFirst();
  }

  /** The profiles that recognise a file's name; more than one is a mistake of the workspace. */
  public List<SourceProfile> recognising(String fileName) {
    return all.stream().filter(profile -> profile.recognises(fileName)).toList();
  }
}
