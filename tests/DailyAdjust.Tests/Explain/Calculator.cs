using System.Globalization;

namespace DailyAdjust.Tests.Explain;

/// <summary>A pocket calculator: reckons what an explanation prints, and knows nothing of where it comes from.</summary>
internal sealed class Calculator
{
    private readonly string _text;
    private int _at;

    private Calculator(string text) => _text = text.Replace(" ", "", StringComparison.Ordinal);

    public static double Reckon(string text)
    {
        var calculator = new Calculator(text);
        var value = calculator.Sum();
        return calculator._at == calculator._text.Length ? value : throw new FormatException($"{text} at {calculator._at}");
    }

    private double Sum()
    {
        var value = Product();
        while (_at < _text.Length && _text[_at] is '+' or '-')
        {
            value = _text[_at++] == '+' ? value + Product() : value - Product();
        }

        return value;
    }

    private double Product()
    {
        var value = Power();
        while (_at < _text.Length && _text[_at] is '*' or '/')
        {
            value = _text[_at++] == '*' ? value * Power() : value / Power();
        }

        return value;
    }

    private double Power()
    {
        if (Take('-'))
        {
            return -Power();
        }

        var value = Single();
        return Take('^') ? Math.Pow(value, Power()) : value;
    }

    private double Single()
    {
        if (Take('('))
        {
            var inner = Sum();
            Must(')');
            return inner;
        }

        var begin = _at;
        if (char.IsLetter(_text[_at]))
        {
            while (_at < _text.Length && char.IsLetter(_text[_at]))
            {
                _at++;
            }

            return Named(_text[begin.._at]);
        }

        while (_at < _text.Length && (char.IsAsciiDigit(_text[_at]) || _text[_at] == '.'))
        {
            _at++;
        }

        return double.Parse(_text[begin.._at], CultureInfo.InvariantCulture);
    }

    private double Named(string name)
    {
        if (name is "pi")
        {
            return Math.PI;
        }

        Must('(');
        var first = Sum();
        List<double> all = [first];
        while (Take(','))
        {
            all.Add(Sum());
        }

        Must(')');
        return name switch
        {
            "exp" => Math.Exp(first),
            "ln" => Math.Log(first),
            "sqrt" => Math.Sqrt(first),
            "sin" => Math.Sin(first),
            "cos" => Math.Cos(first),
            "tan" => Math.Tan(first),
            "arccos" => Math.Acos(first),
            "min" => all.Min(),
            "max" => all.Max(),
            "floor" => Math.Floor(first + 1e-9),
            "ceil" => Math.Ceiling(first - 1e-9),
            "round" => Math.Floor(first + 0.5 + 1e-9),
            _ => throw new FormatException(name),
        };
    }

    private bool Take(char c)
    {
        if (_at < _text.Length && _text[_at] == c)
        {
            _at++;
            return true;
        }

        return false;
    }

    private void Must(char c)
    {
        if (!Take(c))
        {
            throw new FormatException($"{_text} at {_at}: {c} expected");
        }
    }
}
