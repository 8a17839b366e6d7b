package withers.ingest.profile;

import java.nio.charset.Charset;
import java.util.Arrays;
import withers.ingest.sniff.Delimiter;
import withers.ingest.sniff.Quoting;
import withers.yaml.Choices;
import withers.yaml.Fields;

/** Reads how a source writes its files, and where it tells their date. */
final class FormatReader {

  private FormatReader() {}

  static FileFormat defaultFormat() {
    return new FileFormat(TextFormat.FOUND_OUT, DatePattern.of("yyyy-MM-dd"));
  }

  static FileFormat format(Fields fields) {
    return new FileFormat(
        new TextFormat(
            fields.optionalValue("delimiter", FormatReader::delimiter),
            fields.optionalValue("quote", FormatReader::quoting),
            fields.optionalValue("charset", FormatReader::charset)),
        fields.optionalText("sheet"),
        fields.list("totals", FormatReader::totals),
        fields.optionalValue("date", DatePattern::of).orElse(DatePattern.of("yyyy-MM-dd")));
  }

  private static Delimiter delimiter(String text) {
    return Arrays.stream(Delimiter.values())
        .filter(one -> text.equals(String.valueOf(one.sign())))
        .findFirst()
        .orElseGet(() -> Choices.read(Delimiter.class, text));
  }

  private static Quoting quoting(String text) {
    return Arrays.stream(Quoting.values())
        .filter(one -> one.sign().map(String::valueOf).filter(text::equals).isPresent())
        .findFirst()
        .orElseGet(() -> Choices.read(Quoting.class, text));
  }

  private static String totals(String text) {
    if (text.isBlank()) {
      throw new IllegalArgumentException("Expected a word such as Total, but found none");
    }
    return text;
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
