package withers.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.organisation.Period;
import withers.point.Points;
import withers.yaml.ConfigException;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OverridesTest {
  @TempDir private Path folder;

  @BeforeEach
  void writes_settings() throws IOException {
    Files.writeString(
        folder.resolve("withers.yaml"),
        """
        network: Coast Network
        zone: Europe/Lisbon
        coordinator: coast
        grace-days: 30
        mail: {reminder-days: 20, server: {host: smtp.example.org, port: 25}}
        """);
    Files.writeString(
        folder.resolve("organisations.yaml"),
        "organisations: [{id: coast, name: Coast, kind: coordinator}]\n");
  }

  private Workspace open(Map<String, String> variables) {
    return Workspace.open(folder, Clock.systemUTC(), Points.NONE, variables, BeforeUpgrade.REFUSED);
  }

  @Test
  void a_variable_stands_in_place_of_the_file_s_value_and_the_rest_stays() {
    Settings settings =
        open(Map.of(
                "WITHERS_SETTING_GRACE_DAYS", "14",
                "WITHERS_SETTING_MAIL__SERVER__HOST", "mail.example.org",
                "WITHERS_SETTING_WATCH__PORT", "9464"))
            .settings();

    assertThat(settings.periods().days(Period.GRACE)).isEqualTo(14);
    MailServer server = settings.mail().server().orElseThrow();
    assertThat(server.host()).isEqualTo("mail.example.org");
    assertThat(server.port()).isEqualTo(25);
    assertThat(settings.mail().reminderDays()).isEqualTo(20);
    assertThat(settings.watch().port()).contains(9464);
    assertThat(settings.network()).isEqualTo("Coast Network");
  }

  @Test
  void other_variables_say_nothing() {
    assertThat(open(Map.of("WITHERS_WORKSPACE", "elsewhere", "GRACE_DAYS", "1")).settings())
        .isEqualTo(open(Map.of()).settings());
  }

  @Test
  void a_key_that_nobody_knows_and_a_wrong_value_are_told_with_the_variable() {
    assertThatThrownBy(() -> open(Map.of("WITHERS_SETTING_GRACE_DAY", "14")))
        .isInstanceOf(ConfigException.class)
        .hasMessageContaining("\"grace-day\"")
        .hasMessageContaining("environment variable WITHERS_SETTING_GRACE_DAY")
        .hasMessageContaining("did you mean \"grace-days\"?");
    assertThatThrownBy(() -> open(Map.of("WITHERS_SETTING_GRACE_DAYS", "two weeks")))
        .isInstanceOf(ConfigException.class)
        .hasMessageContaining("environment variable WITHERS_SETTING_GRACE_DAYS");
  }

  @Test
  void a_password_can_t_be_given_so_and_is_not_shown() {
    assertThatThrownBy(() -> open(Map.of("WITHERS_SETTING_MAIL__SERVER__PASSWORD", "five words")))
        .isInstanceOf(ConfigException.class)
        .hasMessageContaining("\"password\"")
        .message()
        .doesNotContain("five words");
  }

  @Test
  void settings_tell_where_they_come_from() {
    List<EffectiveSettings.Line> lines =
        EffectiveSettings.of(open(Map.of("WITHERS_SETTING_MAIL__REMINDER_DAYS", "10")));

    assertThat(lines)
        .contains(
            new EffectiveSettings.Line(
                "mail.reminder-days",
                "10",
                Optional.of("environment variable WITHERS_SETTING_MAIL__REMINDER_DAYS")),
            new EffectiveSettings.Line(
                "grace-days", "30", Optional.of("withers.yaml, line 4, column 13")));
  }
}
