package withers.law;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import withers.demo.DemoWorld;

/**
 * A small world of the demo's, told over again in another way: the same lives, so that what is
 * found must stay the same, too.
 */
final class Retold {

  /** Of a small world's few rows, a few damaged ones are a large share. */
  private static final String MANY_REJECTS = "\nlimits: {rejects: 100 %, floor: 0}\n";

  private static final Pattern DAY_IN_NAME = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");
  private static final Map<String, Character> DELIMITERS =
      Map.of("comma", ',', "semicolon", ';', "tab", '\t', "bar", '|');

  /** How a file's cells may be changed. */
  private interface Retelling {
    String cell(String cell, long line);
  }

  private final Path folder;

  Retold(Path folder, long seed, int animals) throws IOException {
    this.folder = folder;
    DemoWorld.generate(seed, animals, folder);
    for (Path profile : profiles()) {
      Files.writeString(profile, MANY_REJECTS, StandardOpenOption.APPEND);
    }
  }

  Path workspace() {
    return folder.resolve("workspace");
  }

  /** In the order of their months, then of their names. */
  List<Path> exports() {
    return Stream.of("2026-09", "2026-10")
        .flatMap(month -> files(folder.resolve(month)).stream())
        .toList();
  }

  List<Path> firstMonth() {
    return files(folder.resolve("2026-09"));
  }

  private List<Path> profiles() {
    return files(workspace().resolve("sources"));
  }

  private List<Path> exportsOf(Path profile) {
    String source = profile.getFileName().toString().replace(".yaml", "");
    return exports().stream()
        .filter(file -> file.getFileName().toString().matches(Pattern.quote(source) + "-\\d.*"))
        .toList();
  }

  /** Every day, in cells and names of files, is so many days later. */
  Retold later(int days) throws IOException {
    for (Path profile : profiles()) {
      DateTimeFormatter written = strict(format(profile, "date", "yyyy-MM-dd"));
      for (Path file : exportsOf(profile)) {
        rewrite(file, delimiter(profile), (cell, line) -> later(cell, written, days));
        Files.move(file, file.resolveSibling("later " + laterName(file, days)));
      }
    }
    for (Path moved : exports()) {
      Files.move(moved, moved.resolveSibling(moved.getFileName().toString().replace("later ", "")));
    }
    return this;
  }

  /** A day that is none, such as 30 February, stays. */
  private static DateTimeFormatter strict(String pattern) {
    return DateTimeFormatter.ofPattern(pattern.replace('y', 'u'), Locale.ROOT)
        .withResolverStyle(ResolverStyle.STRICT);
  }

  private static String laterName(Path file, int days) {
    return DAY_IN_NAME
        .matcher(file.getFileName().toString())
        .replaceAll(day -> LocalDate.parse(day.group()).plusDays(days).toString());
  }

  private static String later(String cell, DateTimeFormatter written, int days) {
    try {
      return LocalDate.parse(cell, written).plusDays(days).format(written);
    } catch (DateTimeParseException noDay) {
      return cell;
    }
  }

  /** Every column has another header, in files and profiles. */
  Retold underOtherHeaders() throws IOException {
    for (Path profile : profiles()) {
      List<Path> exports = exportsOf(profile);
      for (String header : headers(exports.get(0), delimiter(profile))) {
        rename(header, profile);
      }
      for (Path file : exports) {
        rewrite(file, delimiter(profile), (cell, line) -> line == 1 ? renamed(cell) : cell);
      }
    }
    return this;
  }

  /** Where the header stands alone or in a list, quoted or not. */
  private static void rename(String header, Path profile) throws IOException {
    String whole = "(?<=[:,] |\\[)(['\"]?)" + Pattern.quote(header) + "\\1(?= *(?:[],}#\\n]))";
    String yaml = Files.readString(profile);
    Files.writeString(profile, yaml.replaceAll(whole, renamed(header)));
  }

  private static String renamed(String header) {
    return "column-" + Integer.toHexString(header.hashCode());
  }

  /** Somebody who has nothing to do with anybody: a clinic with patients of its own. */
  Retold besideAnUnrelatedClinic() throws IOException {
    Path sources = workspace().resolve("sources");
    Path profile = sources.resolve("nethersay-patients.yaml");
    Files.writeString(
        sources.resolve("farholm-patients.yaml"),
        Files.readString(profile).replace("nethersay", "farholm"));
    Files.writeString(
        workspace().resolve("organisations.yaml"),
        "\n  - id: farholm-clinic\n    name: Farholm Clinic\n    kind: clinic\n",
        StandardOpenOption.APPEND);
    for (Path file : exportsOf(profile)) {
      Path copy =
          file.resolveSibling(file.getFileName().toString().replace("nethersay", "farholm"));
      Files.copy(file, copy);
      rewrite(copy, delimiter(profile), (cell, line) -> cell.replaceFirst("^9990[1-5]", "99907"));
    }
    return this;
  }

  private static char delimiter(Path profile) throws IOException {
    return DELIMITERS.get(format(profile, "delimiter", "comma"));
  }

  private static String format(Path profile, String key, String otherwise) throws IOException {
    Matcher found =
        Pattern.compile("format: .*\\b" + key + ": ([^,}]+)").matcher(Files.readString(profile));
    return found.find() ? found.group(1) : otherwise;
  }

  private static List<String> headers(Path file, char delimiter) throws IOException {
    return rows(file, delimiter).get(0).toList();
  }

  private static List<CSVRecord> rows(Path file, char delimiter) throws IOException {
    try (Reader text = Files.newBufferedReader(file);
        CSVParser parser = csv(delimiter).parse(text)) {
      return parser.getRecords();
    }
  }

  private static void rewrite(Path file, char delimiter, Retelling retelling) throws IOException {
    List<CSVRecord> rows = rows(file, delimiter);
    try (CSVPrinter printer = new CSVPrinter(Files.newBufferedWriter(file), csv(delimiter))) {
      for (CSVRecord row : rows) {
        printer.printRecord(row.stream().map(cell -> retelling.cell(cell, row.getRecordNumber())));
      }
    }
  }

  private static CSVFormat csv(char delimiter) {
    return CSVFormat.DEFAULT.builder().setDelimiter(delimiter).setRecordSeparator("\n").get();
  }

  private static List<Path> files(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
