# bash completion for underscreed: the program itself names its commands and options.

_underscreed()
{
    local current=${COMP_WORDS[COMP_CWORD]}
    local program=${COMP_WORDS[0]/#\~\//$HOME/}
    local command='' word

    for word in "${COMP_WORDS[@]:1:COMP_CWORD-1}"; do
        if [[ $word != -* ]]; then
            command=$word
            break
        fi
    done

    COMPREPLY=()
    # After the command a word without a dash is a file (complete -o default) or a value.
    if [[ -z $command || $current == -* ]]; then
        mapfile -t COMPREPLY < <(compgen -W "$("$program" options ${command:+"$command"} 2>/dev/null)" -- "$current")
    fi
}

complete -o default -F _underscreed underscreed
