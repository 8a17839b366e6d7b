package withers.contact.sqlite;

import withers.contact.ContactVault;
import withers.sqlite.SqliteFile;
import withers.sqlite.Upgrading;

/** The same vault, when contacts come among the recent ones and stay there. */
class RecentContactVaultTest extends SqliteContactVaultTest {

  @Override
  protected ContactVault open() {
    SqliteFile file = new SqliteFile(file(), VaultSchema.FORMAT, Upgrading.AT_ONCE);
    Tables never = new Tables(0, Tables.USUAL.fewRecent());
    return SqliteContactVault.open(file, KEY, references -> {}, never);
  }

  @Override
  String newest() {
    return "recent_contact";
  }
}
