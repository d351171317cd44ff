# Signing in and changing a password.

sign-in-title = Sign in
sign-in-heading = Good to see you
sign-in-lede = Sign in to open your page.
sign-in-name = Sign-in name
sign-in-password = Password
sign-in-password-hint = Or the one-time code that you were given.
sign-in-do = Sign in
sign-in-forgotten = Forgotten it? Ask your supervisor or administrator for a one-time code. It works for 72 hours.
sign-in-wait = Too many tries. Wait { $seconds ->
        [one] { $seconds } second
       *[other] { $seconds } seconds
    }, then try again.
sign-in-not-in = Not signed in yet
sign-in-ended-title = Your session ended. What you wrote is kept.
sign-in-ended = Sign in again and it is still there to save. It is given back only to the person who wrote it.
sign-in-lost-title = Your session ended. What you wrote could not be kept.
sign-in-lost = Go back in the browser: it may still be on that page. Copy it first, then sign in and write it again.
sign-in-carried-title = Welcome back: not saved yet
sign-in-carried = All you wrote before the session ended is still here. Send it now.
sign-in-carried-do = Save what I wrote
sign-in-carried-leave = Leave it, go to my page
password-title = Change your password
password-lede-first = You came with a one-time code. Choose your own password to go on.
password-lede = After this, all your other phones and browsers are signed out.
password-present = Present password
password-new = New password
password-new-hint = At least 15 characters. Three or four words that only you would put together are easy to keep in mind.
password-again = New password again
password-do = Change it
