package withers.chip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import withers.chip.CountryCodes.Status;

/** The tables against Debian's iso-codes package, code by code, and the ranges around them. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CountryCodesTest {

  private static final Path ISO_CODES = Path.of("/usr/share/iso-codes/json");

  @Test
  void are_the_assigned_ones_of_iso_codes() {
    Map<Integer, String> assigned = isoCodes("iso_3166-1.json", "3166-1");
    assertThat(assigned).hasSize(249);
    assertThat(codes(Status.ASSIGNED)).isEqualTo(assigned.keySet());
    assigned.forEach(
        (code, letters) -> assertThat(CountryCodes.numeric(letters)).as(letters).hasValue(code));
  }

  @Test
  void are_withdrawn_where_iso_codes_knows_only_a_former_country() {
    Set<Integer> withdrawn = new TreeSet<>(isoCodes("iso_3166-3.json", "3166-3").keySet());
    withdrawn.removeAll(isoCodes("iso_3166-1.json", "3166-1").keySet());
    assertThat(codes(Status.WITHDRAWN)).isEqualTo(withdrawn);
  }

  @Test
  void know_the_letters_of_former_countries_with_a_number() {
    for (JsonNode entry : entries("iso_3166-3.json", "3166-3")) {
      if (entry.has("numeric")) {
        assertThat(CountryCodes.numeric(entry.get("alpha_3").asString()))
            .as(entry.toString())
            .hasValue(Integer.parseInt(entry.get("numeric").asString()));
      }
    }
  }

  /** The count is the trade's: thirty countries whose leading zero a spreadsheet drops. */
  @Test
  void begin_with_zero_in_thirty_countries() {
    assertThat(codes(Status.ASSIGNED).stream().filter(code -> code < 100)).hasSize(30);
  }

  /** Ranges of ISO 11784, and single codes of ISO 3166, from the facts of the trade. */
  @ParameterizedTest
  @CsvSource({
    "-1, NEVER_VALID",
    "0, NEVER_VALID",
    "3, NEVER_VALID",
    "4, ASSIGNED",
    "5, UNASSIGNED",
    "36, ASSIGNED",
    "200, WITHDRAWN",
    "528, ASSIGNED",
    "894, ASSIGNED",
    "895, NEVER_VALID",
    "899, NEVER_VALID",
    "900, MANUFACTURER",
    "983, MANUFACTURER",
    "998, MANUFACTURER",
    "999, TEST",
    "1000, NEVER_VALID",
    "1023, NEVER_VALID",
    "2147483647, NEVER_VALID",
    "-2147483648, NEVER_VALID",
  })
  void have_a_status_in_every_range(int code, Status status) {
    assertThat(CountryCodes.status(code)).isEqualTo(status);
  }

  @Test
  void have_no_number_for_unknown_letters() {
    assertThat(CountryCodes.numeric("XXX")).isEmpty();
    assertThat(CountryCodes.numeric("aus")).isEmpty();
    assertThat(CountryCodes.numeric("")).isEmpty();
  }

  private static Set<Integer> codes(Status status) {
    return IntStream.rangeClosed(0, 1023)
        .filter(code -> CountryCodes.status(code) == status)
        .boxed()
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Map<Integer, String> isoCodes(String file, String list) {
    Map<Integer, String> codes = new TreeMap<>();
    for (JsonNode entry : entries(file, list)) {
      if (entry.has("numeric")) {
        codes.put(
            Integer.parseInt(entry.get("numeric").asString()), entry.get("alpha_3").asString());
      }
    }
    return codes;
  }

  private static JsonNode entries(String file, String list) {
    Path path = ISO_CODES.resolve(file);
    boolean mustBeThere = "true".equals(System.getenv("CI"));
    assumeTrue(
        mustBeThere || Files.exists(path),
        "not compared: " + path + " comes with the package iso-codes (apt-get install iso-codes)");
    assertThat(path).as("install the package iso-codes").exists();
    return JsonMapper.shared().readTree(path.toFile()).get(list);
  }
}
