# Signing in and changing a password.

sign-in-title = Se connecter
sign-in-heading = Content de vous voir
sign-in-lede = Connectez-vous pour ouvrir votre page.
sign-in-name = Nom de connexion
sign-in-password = Mot de passe
sign-in-password-hint = Ou le code à usage unique que l’on vous a donné.
sign-in-do = Se connecter
sign-in-forgotten = Oublié ? Demandez un code à usage unique à votre superviseur ou à l’administrateur. Il vaut 72 heures.
sign-in-wait = Trop d’essais. Attendez { $seconds ->
        [one] { $seconds } seconde
       *[other] { $seconds } secondes
    }, puis réessayez.
sign-in-not-in = Pas encore connecté
sign-in-ended-title = Votre session est finie. Ce que vous avez écrit est gardé.
sign-in-ended = Reconnectez-vous : vous pourrez l’enregistrer. Cela n’est rendu qu’à la personne qui l’a écrit.
sign-in-lost-title = Votre session est finie. Ce que vous avez écrit n’a pas pu être gardé.
sign-in-lost = Revenez en arrière dans le navigateur : c’est peut-être encore sur cette page. Copiez-le d’abord, puis reconnectez-vous et écrivez-le de nouveau.
sign-in-carried-title = Vous revoilà : pas encore enregistré
sign-in-carried = Tout ce que vous aviez écrit est encore là. Envoyez-le maintenant.
sign-in-carried-do = Enregistrer ce que j’ai écrit
sign-in-carried-leave = Abandonner et aller à ma page
password-title = Changer de mot de passe
password-lede-first = Vous êtes venu avec un code à usage unique. Choisissez votre mot de passe pour continuer.
password-lede = Ensuite, vos autres téléphones et navigateurs seront déconnectés.
password-present = Mot de passe actuel
password-new = Nouveau mot de passe
password-new-hint = Au moins 15 caractères. Trois ou quatre mots que vous seul mettriez ensemble se retiennent bien.
password-again = Nouveau mot de passe, encore une fois
password-do = Changer
