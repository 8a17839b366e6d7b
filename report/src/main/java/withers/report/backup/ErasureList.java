package withers.report.backup;

import java.io.IOException;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;
import withers.contact.Erasures;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * What was forgotten, as a text file that outlives a workspace: references and records, which are
 * pseudonymous personal data, and no details.
 */
public final class ErasureList {
  static final String NAME = "erasures.txt";

  private static final String HEAD = "withers erasures, format 1";

  private ErasureList() {}

  /** The file's text: a line for each, in order. */
  public static String write(Erasures erasures) {
    Stream<String> references =
        erasures.references().stream().sorted().map(reference -> "reference " + reference);
    Stream<String> records =
        erasures.records().stream()
            .map(one -> "record %s %s".formatted(one.source(), coded(one.key().value())))
            .sorted();
    return Stream.of(Stream.of(HEAD), references, records)
        .flatMap(all -> all)
        .collect(Collectors.joining("\n", "", "\n"));
  }

  private static String coded(String key) {
    return URLEncoder.encode(key, StandardCharsets.UTF_8);
  }

  /**
   * Takes the file back.
   *
   * @throws BackupRefusedException when it is none, or not whole
   */
  public static Erasures read(Path file) throws IOException {
    List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
    if (lines.isEmpty() || !lines.get(0).equals(HEAD)) {
      throw new BackupRefusedException(
          "Expected a list of erasures of format 1, but found another file (%s)".formatted(file));
    }
    Set<ContactRef> references = new HashSet<>();
    Set<RecordName> records = new HashSet<>();
    for (int i = 1; i < lines.size(); i++) {
      read(lines.get(i).split(" "), i + 1, file, references, records);
    }
    return new Erasures(references, records);
  }

  private static void read(
      String[] words, int line, Path file, Set<ContactRef> references, Set<RecordName> records) {
    try {
      if (words.length == 2 && words[0].equals("reference")) {
        references.add(ContactRef.parse(words[1]));
        return;
      }
      if (words.length == 3 && words[0].equals("record")) {
        String key = URLDecoder.decode(words[2], StandardCharsets.UTF_8);
        records.add(new RecordName(new SourceId(words[1]), new RecordKey(key)));
        return;
      }
    } catch (IllegalArgumentException wrong) {
      // told below, with its place
    }
    throw new BackupRefusedException(
        "Expected a reference or a record, but found something else (%s, line %d)"
            .formatted(file, line));
  }
}
