package withers.ingest.profile;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import withers.yaml.Fields;

/** Reads how a source writes its files, and where it tells their date. */
final class FormatReader {

  private FormatReader() {}

  static FileFormat defaultFormat() {
    return new FileFormat(
        ',', StandardCharsets.UTF_8, DatePattern.of("yyyy-MM-dd"), Optional.empty());
  }

  static FileFormat format(Fields fields) {
    return new FileFormat(
        fields.optionalValue("delimiter", FormatReader::delimiter).orElse(','),
        fields.optionalValue("charset", FormatReader::charset).orElse(StandardCharsets.UTF_8),
        fields.optionalValue("date", DatePattern::of).orElse(DatePattern.of("yyyy-MM-dd")),
        fields.optionalText("sheet"));
  }

  private static char delimiter(String text) {
    return switch (text) {
      case "comma", "," -> ',';
      case "semicolon", ";" -> ';';
      case "tab", "\t" -> '\t';
      case "bar", "|" -> '|';
      default ->
          throw new IllegalArgumentException(
              "Expected one of comma, semicolon, tab, bar, but found \"%s\"".formatted(text));
    };
  }

  private static Charset charset(String text) {
    try {
      return Charset.forName(text);
    } catch (IllegalArgumentException unknown) {
      throw new IllegalArgumentException(
          "Expected a character set such as UTF-8 or windows-1252, but found \"%s\""
              .formatted(text),
          unknown);
    }
  }

  static ExportDateRule onCommand() {
    return new ExportDateRule(ExportDateRule.From.COMMAND, "");
  }

  static ExportDateRule exportDate(Fields fields) {
    ExportDateRule.From from = fields.choice("from", ExportDateRule.From.class);
    return switch (from) {
      case FILE_NAME ->
          new ExportDateRule(
              from,
              fields
                  .optionalValue("pattern", DatePattern::of)
                  .map(DatePattern::toString)
                  .orElse("yyyy-MM-dd"));
      case COLUMN -> new ExportDateRule(from, fields.text("column"));
      case COMMAND -> onCommand();
    };
  }
}
