package withers.report.demo;

import java.time.LocalDate;
import withers.yaml.Fields;

/**
 * One monthly round of the demo.
 *
 * @param name what people call it
 * @param folder the folder with its exports, below the demo's fixtures
 * @param asOf the day that its run judges
 */
public record Round(String name, String folder, LocalDate asOf) {

  static Round read(Fields fields) {
    return new Round(fields.text("name"), fields.text("folder"), fields.date("as-of"));
  }
}
