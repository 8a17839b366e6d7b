package withers.workspace;

import java.time.ZoneId;
import java.time.ZoneOffset;
import withers.yaml.Values;

/**
 * What a new workspace starts with.
 *
 * @param network the network's name
 * @param zone whose calendar says what today is
 * @param phoneRegion as in {@link Settings#phoneRegion}
 * @param language a language tag such as {@code en}
 * @param testNumbers whether numbers under the test code are taken
 */
public record NewWorkspace(
    String network, ZoneId zone, String phoneRegion, String language, TestNumbers testNumbers) {

  /**
   * Answers as settings take them.
   *
   * @throws IllegalArgumentException for a blank network, a zone without a name in the tz database,
   *     an unknown region or language
   */
  public NewWorkspace {
    if (network.isBlank()) {
      throw new IllegalArgumentException("Expected the network's name, but found none");
    }
    zone = Values.zone(zone.equals(ZoneOffset.UTC) ? "UTC" : zone.getId());
    phoneRegion = SettingsReader.region(phoneRegion);
    language = SettingsReader.language(language).toLanguageTag();
  }
}
