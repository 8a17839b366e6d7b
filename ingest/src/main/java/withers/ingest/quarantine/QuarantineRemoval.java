package withers.ingest.quarantine;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.contact.ContactVault.RecordName;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.ingest.csv.CsvText;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;
import withers.ingest.translate.Keys;
import withers.workspace.OwnerOnly;

/**
 * Takes rows out of quarantine files for good.
 *
 * @param profiles tell which columns name a record
 */
public record QuarantineRemoval(Profiles profiles) {

  private static final char BYTE_ORDER_MARK = '\uFEFF';

  /**
   * What would be, or was, taken out of a file.
   *
   * @param rows how many, from 1
   * @param records whose rows they are, as far as these tell
   */
  public record Removed(Path file, long rows, List<RecordName> records) {
    public Removed {
      records = List.copyOf(records);
    }
  }

  /**
   * Looks for rows, and changes nothing.
   *
   * @param wanted told of a row's cells in one piece
   * @return empty when there are none, or the file is not as {@link QuarantineFile} writes it
   */
  public Optional<Removed> find(Path file, Predicate<String> wanted) {
    List<List<String>> rows = rows(file);
    List<List<String>> found = rows.stream().skip(1).filter(row -> wanted.test(text(row))).toList();
    return found.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Removed(
                file,
                found.size(),
                found.stream()
                    .flatMap(row -> record(rows.get(0), row).stream())
                    .distinct()
                    .toList()));
  }

  /** Takes the rows out; a file of which nothing is left goes. */
  public void remove(Path file, Predicate<String> wanted) {
    List<List<String>> rows = rows(file);
    keep(file, rows, rows.stream().filter(row -> !wanted.test(text(row))).toList());
  }

  /** Takes rows of these records out. */
  public void removeOf(Path file, Set<RecordName> records) {
    List<List<String>> rows = rows(file);
    keep(
        file,
        rows,
        rows.stream()
            .filter(row -> record(rows.get(0), row).filter(records::contains).isEmpty())
            .toList());
  }

  private static void keep(Path file, List<List<String>> rows, List<List<String>> left) {
    if (left.size() == rows.size()) {
      return;
    }
    try {
      if (left.size() > 1) {
        String text = left.stream().map(CsvText::line).collect(Collectors.joining());
        OwnerOnly.replace(file, (BYTE_ORDER_MARK + text).getBytes(StandardCharsets.UTF_8));
      } else {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String text(List<String> row) {
    return String.join(" ", row);
  }

  private static List<List<String>> rows(Path file) {
    try {
      String text = Files.readString(file, StandardCharsets.UTF_8);
      List<List<String>> rows =
          CsvText.rows(
              !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text);
      boolean isOurs = !rows.isEmpty() && isHeader(rows.get(0));
      return isOurs ? rows : List.of();
    } catch (IllegalArgumentException | IOException worked) {
      return List.of(); // somebody has saved it in another form, or it is none of ours
    }
  }

  private static boolean isHeader(List<String> row) {
    int ours = QuarantineColumns.OURS.size();
    return row.size() >= ours && row.subList(0, ours).equals(QuarantineColumns.OURS);
  }

  private Optional<RecordName> record(List<String> header, List<String> row) {
    try {
      SourceId source = new SourceId(row.get(QuarantineColumns.SOURCE));
      return profiles
          .find(source)
          .map(profile -> key(profile, header, row))
          .filter(key -> !key.isEmpty())
          .map(key -> new RecordName(source, new RecordKey(key)));
    } catch (IllegalArgumentException unnamed) {
      return Optional.empty();
    }
  }

  private static String key(SourceProfile profile, List<String> header, List<String> row) {
    return Keys.of(profile.key().stream().map(column -> cell(column, header, row)).toList());
  }

  private static String cell(String column, List<String> header, List<String> row) {
    return Stream.iterate(QuarantineColumns.OURS.size(), i -> i + 1)
        .limit(Math.max(0, Math.min(header.size(), row.size()) - QuarantineColumns.OURS.size()))
        .filter(i -> QuarantineColumns.exported(header.get(i)).strip().equalsIgnoreCase(column))
        .map(i -> QuarantineColumns.isMark(row.get(i)) ? "" : Verbatim.undo(row.get(i)).strip())
        .findFirst()
        .orElse("");
  }
}
