package withers.reconcile.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class NormaliserStampTest {

  @Test
  void it_names_the_region_the_java_the_libraries_and_the_code() {
    String stamp = NormaliserStamp.of("GB").orElseThrow();

    assertThat(stamp)
        .matches(
            "GB; java \\d+; libphonenumber-[\\d.]+\\.jar, icu4j-[\\d.]+\\.jar, commons-codec-[\\d.]+\\.jar; code [0-9a-f]{64}");
    assertThat(NormaliserStamp.of("GB")).hasValue(stamp);
    assertThat(NormaliserStamp.of("US")).isPresent().isNotEqualTo(NormaliserStamp.of("GB"));
  }
}
