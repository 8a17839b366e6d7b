package withers.ingest.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.ingest.pack.PackedFile;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class FileDigestTest {

  @TempDir Path folder;

  private FileDigest digest(byte[] bytes) throws IOException {
    Path file = Files.write(Files.createTempFile(folder, "export", ".csv"), bytes);
    return FileDigest.of(PackedFile.plain(file));
  }

  /** SHA-256 of the empty message and of "abc": FIPS 180-4 examples. */
  @ParameterizedTest
  @CsvSource({
    "'',e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
    "abc,ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
  })
  void digests_as_the_standard_says(String text, String expected) throws IOException {
    assertThat(digest(text.getBytes(java.nio.charset.StandardCharsets.US_ASCII)).hex())
        .isEqualTo(expected);
  }

  @Test
  void digests_every_byte_of_a_large_file() throws Exception {
    byte[] bytes = new byte[1_000_003];
    new Random(20310131).nextBytes(bytes);

    assertThat(digest(bytes).hex())
        .isEqualTo(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)));
    assertThat(digest(bytes)).isEqualTo(digest(bytes)).hasSameHashCodeAs(digest(bytes));
  }

  @Test
  void a_file_that_is_gone_is_told_when_its_digest_is_needed() {
    FileDigest digest = FileDigest.of(PackedFile.plain(folder.resolve("gone.csv")));

    assertThatThrownBy(digest::hex).isInstanceOf(UncheckedIOException.class);
  }
}
