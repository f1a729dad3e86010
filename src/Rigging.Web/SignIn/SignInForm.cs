namespace Rigging.Web.SignIn;

public sealed class SignInForm
{
    public string? Name { get; set; }
    public string? Password { get; set; }
}
