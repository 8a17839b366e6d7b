package withers.report.backup;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.workspace.OwnerOnly;

/**
 * What a backup holds: SHA-256 of each file, in the form that {@code sha256sum --check} reads
 * (coreutils), under a line that says what this is. With names and digests it also notices files
 * that are missing and files that are too many.
 *
 * @param digests by place in the backup, with slashes
 */
record Manifest(Map<String, String> digests) {
  static final String NAME = "manifest.sha256";

  private static final String HEAD = "# withers backup, format 1, taken ";
  private static final Pattern LINE = Pattern.compile("([0-9a-f]{64})  (.+)");
  private static final int BUFFER = 1 << 16;

  Manifest {
    digests = java.util.Collections.unmodifiableMap(new TreeMap<>(digests));
  }

  /** Of all files in a folder but the manifest itself. */
  static Manifest of(Path folder) throws IOException {
    Map<String, String> digests = new TreeMap<>();
    for (Path file : files(folder)) {
      digests.put(shown(folder, file), sha256(file));
    }
    digests.remove(NAME);
    return new Manifest(digests);
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }

  private static String shown(Path folder, Path file) {
    return folder.relativize(file).toString().replace('\\', '/');
  }

  void write(Path folder, Instant taken) throws IOException {
    String lines =
        digests.entrySet().stream()
            .map(one -> one.getValue() + "  " + one.getKey() + "\n")
            .collect(Collectors.joining());
    OwnerOnly.writeNew(folder.resolve(NAME), HEAD + taken + "\n" + lines);
  }

  /**
   * The manifest of a backup.
   *
   * @throws BackupRefusedException when the folder is no backup, or a newer program's
   */
  static Manifest read(Path folder) throws IOException {
    Path file = folder.resolve(NAME);
    if (!Files.isRegularFile(file)) {
      throw new BackupRefusedException(
          "Expected a backup with a %s, but found none (%s)".formatted(NAME, folder));
    }
    List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
    if (lines.isEmpty() || !lines.get(0).startsWith(HEAD)) {
      throw new BackupRefusedException(
          "Expected a backup of format 1, but found another: a newer Withers may have taken it; use that one (%s)"
              .formatted(file));
    }
    return new Manifest(
        lines.stream()
            .skip(1)
            .map(LINE::matcher)
            .filter(Matcher::matches)
            .collect(Collectors.toMap(line -> line.group(2), line -> line.group(1))));
  }

  /** What is not as this says in a folder, a sentence each. */
  List<String> differences(Path folder) throws IOException {
    Map<String, String> found = of(folder).digests;
    Set<String> all = new TreeSet<>(digests.keySet());
    all.addAll(found.keySet());
    List<String> differences = new ArrayList<>();
    for (String file : all) {
      if (!found.containsKey(file)) {
        differences.add("missing: " + file);
      } else if (!digests.containsKey(file)) {
        differences.add("not of this backup: " + file);
      } else if (!digests.get(file).equals(found.get(file))) {
        differences.add("changed since it was taken: " + file);
      }
    }
    return differences;
  }

  private static String sha256(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      byte[] buffer = new byte[BUFFER];
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        sha.update(buffer, 0, read);
      }
      return HexFormat.of().formatHex(sha.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }
}
