package withers.contact;

class MemoryContactVaultTest extends ContactVaultContract {

  @Override
  protected ContactVault open() {
    return new MemoryContactVault(KEY);
  }
}
