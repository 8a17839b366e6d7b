package withers.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.workspace.MailServer.Login;
import withers.workspace.MailServer.Security;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class MailSettingsReaderTest {
  @TempDir private Path folder;

  @Test
  void all_that_can_be_said_is_read() throws IOException {
    assertThat(
            read(
                """
                mail:
                  reminder-days: 14
                  details: left-out
                  largest-kib: 512
                  server:
                    host: smtp.example.org
                    port: 2525
                    security: tls
                    user: lists@example.org
                    password-file: mail.password
                    certificates: own-authority.pem
                """))
        .isEqualTo(
            new MailSettings(
                14,
                MailSettings.Details.LEFT_OUT,
                MailSettings.Overview.MAILED,
                512,
                Optional.of(
                    new MailServer(
                        "smtp.example.org",
                        2525,
                        Security.TLS,
                        Optional.of(new Login("lists@example.org", "mail.password")),
                        Optional.of("own-authority.pem")))));
  }

  @Test
  void encryption_is_asked_for_unless_the_workspace_says_otherwise() throws IOException {
    assertThat(read("mail: {server: {host: smtp.example.org}}").server())
        .contains(
            new MailServer(
                "smtp.example.org", 587, Security.STARTTLS, Optional.empty(), Optional.empty()));
    assertThat(read("mail: {server: {host: localhost, security: tls}}").server())
        .map(MailServer::port)
        .contains(465);
  }

  @Test
  void a_password_never_goes_out_in_the_clear() {
    assertThatThrownBy(
            () ->
                read(
                    "mail: {server: {host: localhost, security: none, user: me, password-file: p}}"))
        .hasMessage(
            "Expected starttls or tls where there is a user, but found none (withers.yaml, line 4,"
                + " column 44): the password would go out for all to read");
  }

  @Test
  void a_user_needs_a_password_file_and_a_host_is_a_name() {
    assertThatThrownBy(() -> read("mail: {server: {host: localhost, user: me}}"))
        .hasMessageContaining("Expected a user with a password-file, but found one of the two")
        .hasMessageEndingWith("give both, or neither for a server that asks for none");
    assertThatThrownBy(() -> read("mail: {server: {host: 'smtp.example.org me'}}"))
        .hasMessageContaining("Expected the name of a mail server such as smtp.example.org");
  }

  private MailSettings read(String mail) throws IOException {
    Files.writeString(
        folder.resolve("withers.yaml"),
        "network: Coast\nzone: UTC\ncoordinator: coast\n" + mail + "\n");
    Files.writeString(
        folder.resolve("organisations.yaml"),
        "organisations: [{id: coast, name: Coast, kind: coordinator}]\n");
    return Workspace.open(folder, Clock.systemUTC()).settings().mail();
  }
}
