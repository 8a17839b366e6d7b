package withers.workspace;

import java.util.Arrays;
import java.util.IllformedLocaleException;
import java.util.List;
import java.util.Locale;
import withers.id.OrganisationId;
import withers.yaml.Fields;
import withers.yaml.Values;

/** Reads {@code withers.yaml}. */
final class SettingsReader {
  private static final int LONGEST_GRACE = 366;
  private static final int LONGEST_HANDOVER_WINDOW = 31;
  private static final List<String> REGIONS = Arrays.asList(Locale.getISOCountries());
  private static final OrganisationId NOBODY = new OrganisationId("nobody");

  private SettingsReader() {}

  static Settings read(Fields fields) {
    return new Settings(
        fields.text("network"),
        fields.value("zone", Values::zone, java.time.ZoneOffset.UTC),
        fields
            .optionalValue("phone-region", SettingsReader::region)
            .orElse(Settings.UNKNOWN_REGION),
        fields.optionalValue("language", SettingsReader::language).orElse(Locale.ENGLISH),
        fields.choice("test-numbers", TestNumbers.REFUSED),
        fields.value("coordinator", OrganisationId::new, NOBODY),
        fields.wholeNumber("grace-days", Settings.DEFAULT_GRACE_DAYS, 0, LONGEST_GRACE),
        fields.wholeNumber(
            "handover-window-days",
            Settings.DEFAULT_HANDOVER_WINDOW_DAYS,
            0,
            LONGEST_HANDOVER_WINDOW));
  }

  static String region(String text) {
    if (text.equals(Settings.UNKNOWN_REGION) || REGIONS.contains(text)) {
      return text;
    }
    throw new IllegalArgumentException(
        "Expected a country of two capital letters such as PT or US, or ZZ for none, but found \"%s\""
            .formatted(text));
  }

  static Locale language(String text) {
    try {
      return new Locale.Builder().setLanguageTag(text).build();
    } catch (IllformedLocaleException noTag) {
      throw new IllegalArgumentException(
          "Expected a language such as en, en-GB or pt, but found \"%s\"".formatted(text), noTag);
    }
  }
}
